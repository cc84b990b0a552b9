import type { ServerResponse } from 'node:http';
import { GUARDS } from './pages.ts';

/** How often a quiet stream says that it is still there, in milliseconds. */
const BEAT = 25_000;

/** The open windows that want to be told what changed, as server-sent events. */
export class Changes {
  readonly #open = new Set<ServerResponse>();
  readonly #beat = setInterval(() => this.#write(':\n\n'), BEAT).unref();

  get windows(): number {
    return this.#open.size;
  }

  add(response: ServerResponse): void {
    response.writeHead(200, { ...GUARDS, 'content-type': 'text/event-stream' });
    response.write('retry: 1000\n\n');
    this.#open.add(response);
    response.on('close', () => this.#open.delete(response));
  }

  /** Tells every window which rooms of the contract changed. */
  tell(rooms: readonly string[]): void {
    this.#write(`event: change\ndata: ${JSON.stringify(rooms)}\n\n`);
  }

  #write(text: string): void {
    for (const response of this.#open) response.write(text);
  }

  close(): void {
    clearInterval(this.#beat);
    for (const response of this.#open) response.end();
  }
}
