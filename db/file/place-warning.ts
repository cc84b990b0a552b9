import { existsSync, readdirSync, readFileSync, statfsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

/** A folder in which a database is not safe, and by which sign that was seen. */
export interface PlaceWarning {
  readonly kind: 'synced' | 'network';
  readonly sign: string;
}

// A file system that a program makes up as it goes: a mounted cloud or a share, but also a stick of another system.
const FUSE = 0x65735546;

// Magic numbers of file systems over a network, from statfs(2) and linux/magic.h. Other systems number theirs differently:
// there only the marks tell.
const NETWORK_TYPES: ReadonlyMap<number, string> = new Map([
  [0x6969, 'nfs'],
  [0x517b, 'smb'],
  [0xff534d42, 'cifs'],
  [0xfe534d42, 'smb2'],
  [0x01021997, '9p'],
  [0x5346414f, 'afs'],
  [0x00c36400, 'ceph'],
  [FUSE, 'fuse'],
]);

// Hidden files in which a synchronising program keeps its account of a folder say "sync" in their name (`.sync`,
// `.sync_1f2e.db`, `._sync_1f2e.db`, `.some-sync.log`); and when two machines wrote, it puts one of the two aside with
// "conflict" in the name. Common practice, no source; no program is known by its name, so one that leaves neither is not
// recognised.
const SYNC_MARK = /^\._?sync([._-].*)?$|^\..*sync\.(log|db)$/i;
const CONFLICT = /^shop\b.*conflict/i;
// Where macOS keeps every folder that a file provider fills: developer.apple.com, File Provider.
const PROVIDED = /[\\/]Library[\\/](CloudStorage|Mobile Documents)[\\/]/;

/** Recognises a synced folder or a network drive by the kind of file system and by what a synchronising program leaves. */
export function placeWarning(folder: string, type = fileSystemType(folder)): PlaceWarning | null {
  if (/^[\\/]{2}[^\\/?.]/.test(folder)) return { kind: 'network', sign: folder };
  const full = resolve(folder);
  const provided = PROVIDED.exec(full)?.[1];
  if (provided !== undefined) return { kind: 'synced', sign: provided };
  const conflict = namesIn(full).find((name) => CONFLICT.test(name));
  if (conflict !== undefined) return { kind: 'synced', sign: join(full, conflict) };
  for (let at = full; ; at = dirname(at)) {
    const mark = namesIn(at).find((name) => SYNC_MARK.test(name));
    if (mark !== undefined) return { kind: 'synced', sign: join(at, mark) };
    if (at === dirname(at)) break;
  }
  const network = type === null ? undefined : NETWORK_TYPES.get(type);
  return network ? { kind: 'network', sign: network } : null;
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    // A folder above that this account may not list says nothing.
    return [];
  }
}

/** The file system's number where the folder, or the nearest one above it, stands; null where that says nothing. */
function fileSystemType(folder: string): number | null {
  if (process.platform !== 'linux') return null;
  for (let at = resolve(folder); ; at = dirname(at)) {
    if (existsSync(at)) {
      // The kernel hands out 32 bits; a negative number is the same bits with a sign.
      const type = statfsSync(at).type >>> 0;
      return type === FUSE && isOnDisk(at) ? null : type;
    }
    if (at === dirname(at)) return null;
  }
}

/**
 * Whether a FUSE file system stands on a disk of this machine: then the kernel calls it `fuseblk`, after the dash of
 * its line in /proc/self/mountinfo (proc(5)).
 */
function isOnDisk(folder: string): boolean {
  let best = { point: '', type: '' };
  for (const line of readText('/proc/self/mountinfo').split('\n')) {
    const point = line.split(' ')[4] ?? '';
    const type = line.split(' - ')[1]?.split(' ')[0] ?? '';
    const within = folder === point || folder.startsWith(point.endsWith('/') ? point : `${point}/`);
    if (point !== '' && within && point.length >= best.point.length) best = { point, type };
  }
  return best.type === 'fuseblk';
}

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}
