import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { wordFinder } from '../rulebook/compile/glossary.ts';
import type { Term } from '../rulebook/rulebook.ts';

/** Documents that people read. */
const documents = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'rules/README.md'];

/** The words that the documents and the program's own texts use although the glossary has another: file:line and both. */
export function strayWords(folder: string, terms: readonly Term[]): string[] {
	const find = wordFinder(terms);
	const sources = readdirSync(join(folder, 'src'), { recursive: true, encoding: 'utf8' })
		// The spellings that are taken from a person are many.
		.filter(path => /\.tsx?$/.test(path) && !/tables|plugs.table/.test(path))
		.map(path => join('src', path));
	return [...documents, ...sources].flatMap(path => {
		const lines = textOf(join(folder, path)).split('\n');
		return lines.flatMap((line, index) => {
			const wrong = (path.endsWith('.md') ? [line.replace(/`[^`]*`/g, '')] : literalsOf(line)).map(find).find(Boolean);
			return wrong ? [`${path}:${index + 1}: ${JSON.stringify(wrong.found)} is ${wrong.term} (rules/words.yaml)`] : [];
		});
	});
}

/** A document may not be there yet. */
function textOf(path: string): string {
	try {
		return readFileSync(path, 'utf8');
	} catch {
		return '';
	}
}

/** The texts of a line of code that have a space: words for people, not ids. Comments are not shown to anybody. */
const literalsOf = (line: string): string[] =>
	/^\s*(?:\/\/|\*|\/\*)/.test(line)
		? []
		: [...line.matchAll(/'((?:[^'\\]|\\.)*)'|"((?:[^"\\]|\\.)*)"|`([^`]*)`/g)]
				.map(([, one, two, three]) => (one ?? two ?? three ?? '').replace(/\$\{[^}]*\}/g, ''))
				.filter(text => text.includes(' '));
