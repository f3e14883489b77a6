import { readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { sep } from 'node:path';

/** So many names are offered. */
const most = 200;

/** A path as a person types it: `~` is the home folder. */
export const typedPath = (text: string): string => text.replace(/^~(?=$|[/\\])/, () => homedir());

/** Paths that begin as typed, folders with a separator at their end; hidden names only where a dot was typed. */
export function pathsBeginning(text: string): string[] {
	const cut = Math.max(text.lastIndexOf('/'), text.lastIndexOf(sep)) + 1;
	const [folder, begun] = [text.slice(0, cut), text.slice(cut)];
	try {
		return readdirSync(typedPath(folder) || '.', { withFileTypes: true })
			.filter(({ name }) => name.startsWith(begun) && (begun.startsWith('.') || !name.startsWith('.')))
			.slice(0, most)
			.map(entry => `${folder}${entry.name}${entry.isDirectory() ? '/' : ''}`)
			.sort();
	} catch {
		return [];
	}
}
