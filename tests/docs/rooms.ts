import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What each room under a folder imports of the others, types included. */
function importsOf(folder: string): Map<string, Set<string>> {
	const rooms = readdirSync(folder, { withFileTypes: true }).filter(entry => entry.isDirectory());
	return new Map(
		rooms.map(({ name }) => [name, new Set(roomsRead(join(folder, name)).filter(other => other !== name))]),
	);
}

function roomsRead(room: string): string[] {
	const files = (readdirSync(room, { recursive: true }) as string[]).filter(name => /\.(tsx?|mjs)$/.test(name));
	return files.flatMap(file => {
		const depth = file.split(/[\\/]/).length;
		const path = new RegExp(`(?:from|import\\()\\s*'(?:\\.\\./){${depth}}([a-z]+)/`, 'g');
		return [...readFileSync(join(room, file), 'utf8').matchAll(path)].map(([, other]) => other!);
	});
}

/** The picture of the rooms for DEVELOPERS.md: an arrow where data flows, but none that other arrows make up. */
export function pictureOf(folder: string): string {
	const reads = importsOf(folder);
	const behind = (room: string, seen = new Set<string>()): Set<string> => {
		for (const other of reads.get(room) ?? []) if (!seen.has(other)) behind(other, seen.add(other));
		return seen;
	};
	const arrows = [...reads].flatMap(([room, others]) =>
		[...others]
			.filter(other => ![...others].some(between => between !== other && behind(between).has(other)))
			.map(other => `\t${other} --> ${room}`),
	);
	return ['flowchart LR', ...arrows.sort()].join('\n');
}
