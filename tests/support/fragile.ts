import type { FileSystem } from '../../src/files/file-system.ts';
import { systemError } from './faulty.ts';

/** What happened on the disk, in order. A name that points to no file is a removed one. */
type Change =
	| { kind: 'write'; file: number; at: number; bytes: Uint8Array }
	| { kind: 'names'; set: [name: string, file: number | null][] }
	| { kind: 'flush'; file: number }
	| { kind: 'flush folder' };

/** What each name holds. */
export type Contents = Map<string, Buffer>;

/**
 * A folder in memory that remembers every change to it, so that the power can be cut after any of them.
 * The files it begins with are safe on the disk. A write takes 1500 bytes at most.
 */
export function fragileFolder(begin: Record<string, string>): { on: FileSystem; changes: Change[] } {
	const changes: Change[] = [];
	const names = new Map<string, number>();
	const files: Buffer[] = [];
	const opened: { file: number; at: number }[] = [];
	const create = (name: string, content = '') => {
		const file = files.push(Buffer.from(content)) - 1;
		names.set(name, file);
		changes.push({ kind: 'names', set: [[name, file]] });
		return file;
	};
	const handle = (number: number) => opened[number]!;
	for (const [name, content] of Object.entries(begin)) {
		const file = create(name, content);
		changes.push({ kind: 'write', file, at: 0, bytes: Buffer.from(content) }, { kind: 'flush', file });
	}
	changes.push({ kind: 'flush folder' });

	const on: FileSystem = {
		open(name, flags) {
			const file = names.get(name);
			if (flags === 'wx' && file !== undefined) throw systemError('EEXIST');
			if (flags !== 'wx' && file === undefined) throw systemError('ENOENT');
			return opened.push({ file: file ?? create(name), at: 0 }) - 1;
		},
		read(number, into) {
			const from = handle(number);
			const part = files[from.file]!.subarray(from.at, from.at + into.length);
			into.set(part);
			from.at += part.length;
			return part.length;
		},
		write(number, all) {
			const to = handle(number);
			const bytes = Uint8Array.from(all.subarray(0, 1500));
			changes.push({ kind: 'write', file: to.file, at: to.at, bytes });
			files[to.file] = Buffer.concat([files[to.file]!.subarray(0, to.at), bytes]);
			to.at += bytes.length;
			return bytes.length;
		},
		flush: number => void changes.push({ kind: 'flush', file: handle(number).file }),
		flushFolder: () => void changes.push({ kind: 'flush folder' }),
		rename(from, to) {
			const file = names.get(from)!;
			names.delete(from);
			names.set(to, file);
			// One change: the system moves a name whole or not at all.
			changes.push({
				kind: 'names',
				set: [
					[from, null],
					[to, file],
				],
			});
		},
		unlink(name) {
			if (!names.delete(name)) throw systemError('ENOENT');
			changes.push({ kind: 'names', set: [[name, null]] });
		},
		look: name => (names.has(name) ? { kind: 'file', mode: 0o644, uid: 0, gid: 0, changed: 0 } : null),
		list: () => [...names.keys()],
		chmod() {},
		chown() {},
		close() {},
		makeFolder() {},
		readLink: name => name,
		realPath: name => name,
		pid: 7,
		host: 'bench',
		now: () => 0,
		alive: () => true,
		pause() {},
	};
	return { on, changes };
}

/**
 * Every state the disk may be in when the power goes after these changes. What was flushed is there. Of the rest, each
 * change of a name is there or not, and each write is there, half there or not, whatever came before or after it.
 */
export function* afterPowerCut(changes: Change[]): Generator<Contents> {
	const unsure = changes.flatMap((change, i): { change: Change; shares: number[] }[] => {
		const later = changes.slice(i + 1);
		if (change.kind === 'write') {
			const safe = later.some(one => one.kind === 'flush' && one.file === change.file);
			return safe ? [] : [{ change, shares: [0, 0.5, 1] }];
		}
		const safe = change.kind !== 'names' || later.some(one => one.kind === 'flush folder');
		return safe ? [] : [{ change, shares: [0, 1] }];
	});
	const states = unsure.reduce((product, { shares }) => product * shares.length, 1);
	for (let state = 0; state < states; state++) {
		let rest = state;
		const share = new Map<Change, number>();
		for (const { change, shares } of unsure) {
			share.set(change, shares[rest % shares.length]!);
			rest = Math.floor(rest / shares.length);
		}
		yield contents(changes, change => share.get(change) ?? 1);
	}
}

function contents(changes: Change[], shareOf: (change: Change) => number): Contents {
	const names = new Map<string, number>();
	const files = new Map<number, Buffer>();
	for (const change of changes) {
		const share = shareOf(change);
		if (change.kind === 'write') {
			const bytes = change.bytes.subarray(0, change.bytes.length * share);
			const before = files.get(change.file) ?? Buffer.alloc(0);
			// A write that is there while the one before it is not leaves zeros between.
			const after = Buffer.alloc(Math.max(before.length, bytes.length > 0 ? change.at + bytes.length : 0));
			after.set(before);
			after.set(bytes, bytes.length > 0 ? change.at : 0);
			files.set(change.file, after);
		} else if (change.kind === 'names' && share === 1) {
			for (const [name, file] of change.set) {
				if (file === null) names.delete(name);
				else names.set(name, file);
			}
		}
	}
	return new Map([...names].map(([name, file]) => [name, files.get(file) ?? Buffer.alloc(0)]));
}
