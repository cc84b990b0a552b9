import type { ServerResponse } from 'node:http';
import { GUARDS } from './pages.ts';

/** How often a quiet stream says that it is still there, in milliseconds. */
const BEAT = 25_000;

/** The open windows that want to be told what changed, as server-sent events. */
export class Changes {
  /** The streams, each with the session of its window. */
  readonly #open = new Map<ServerResponse, object>();
  readonly #beat = setInterval(() => this.#write(':\n\n'), BEAT).unref();

  get windows(): number {
    return this.#open.size;
  }

  /** `onGone` is told when the last stream of that session ended. */
  add(response: ServerResponse, session: object, onGone: () => void): void {
    response.writeHead(200, { ...GUARDS, 'content-type': 'text/event-stream' });
    response.write('retry: 1000\n\n');
    this.#open.set(response, session);
    response.on('close', () => {
      this.#open.delete(response);
      if (![...this.#open.values()].includes(session)) onGone();
    });
  }

  /** Tells every window which rooms of the contract changed. */
  tell(rooms: readonly string[]): void {
    this.#write(`event: change\ndata: ${JSON.stringify(rooms)}\n\n`);
  }

  /** Tells every window something of its own. */
  tellEach(event: string, dataFor: (session: object) => unknown): void {
    for (const [response, session] of this.#open)
      response.write(`event: ${event}\ndata: ${JSON.stringify(dataFor(session))}\n\n`);
  }

  #write(text: string): void {
    for (const response of this.#open.keys()) response.write(text);
  }

  close(): void {
    clearInterval(this.#beat);
    for (const response of this.#open.keys()) response.end();
  }
}
