import { BadSheet } from './problem.ts';

/** Deeper than any sheet: a file that is only brackets is refused before it is walked. */
const deepest = 40;

/** A sheet's text as JSON data. Throws a BadSheet that names line and column of what is not JSON. */
export function parseSheet(text: string): unknown {
	if (text.trim() === '') throw new BadSheet([{ path: 'sheet', found: 'an empty file', accepted: 'a JSON object' }]);
	if (depthOf(text) > deepest) {
		throw new BadSheet([
			{ path: 'sheet', found: `brackets more than ${deepest} deep`, accepted: 'a sheet as swap-audit writes it' },
		]);
	}
	try {
		return JSON.parse(text.startsWith('\ufeff') ? text.slice(1) : text);
	} catch (error) {
		const { line, column } = placeIn(text, (error as Error).message);
		const found = `text that is no JSON at line ${line}, column ${column}`;
		throw new BadSheet([{ path: 'sheet', found, accepted: 'a JSON object, whole' }]);
	}
}

/** How deep brackets go, those inside strings not counted. */
function depthOf(text: string): number {
	let depth = 0;
	let deepestYet = 0;
	let inString = false;
	for (let index = 0; index < text.length; index++) {
		const code = text.charCodeAt(index);
		if (inString) {
			if (code === 92) index++;
			else if (code === 34) inString = false;
		} else if (code === 34) inString = true;
		else if (code === 123 || code === 91) deepestYet = Math.max(deepestYet, ++depth);
		else if (code === 125 || code === 93) depth--;
	}
	return deepestYet;
}

/** The engine's message holds the position of the fault, or none when the text just ends. */
function placeIn(text: string, message: string): { line: number; column: number } {
	const position = /position (\d+)/.exec(message)?.[1];
	const before = text.slice(0, position === undefined ? text.length : Number(position));
	const lines = before.split('\n');
	return { line: lines.length, column: lines.at(-1)!.length + 1 };
}
