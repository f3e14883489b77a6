import { basename } from 'node:path';
import { crypto } from './crypto.ts';
import type { FileSystem } from './file-system.ts';

/**
 * A file in the same folder as another. Only the last part of the path is touched: taking a `..` out of it would lead
 * elsewhere when the folder before it is a link.
 */
export function sibling(path: string, name: string): string {
	return path.slice(0, path.length - basename(path).length) + name;
}

/** A hidden file beside another: `/x/mule.json` and `lock` give `/x/.mule.json.lock`. */
export function siblingWith(path: string, ending: string): string {
	return sibling(path, `.${basename(path)}.${ending}`);
}

/** A new name for a half-written file. Its name shows whose it is, so that it can be swept up when its writer died. */
export function tempPath(path: string, on: FileSystem): string {
	return siblingWith(path, `${hostMark(on.host)}-${on.pid}-${crypto().randomBytes(4).toString('hex')}.tmp`);
}

/** Who wrote a half-written file; null when the name is not of that kind. */
export function tempOwner(name: string, on: FileSystem): { pid: number; here: boolean } | null {
	const [, host, pid] = /^\..+\.([0-9a-f]{6})-(\d{1,10})-[0-9a-f]{8}\.tmp$/.exec(name) ?? [];
	return pid === undefined ? null : { pid: Number(pid), here: host === hostMark(on.host) };
}

function hostMark(host: string): string {
	return crypto().createHash('sha256').update(host).digest('hex').slice(0, 6);
}

/** Names that mean a device on Windows, whatever their ending. */
export const deviceName = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;
