import { assess } from '../../audit/assess.ts';
import type { Model } from '../../audit/model.ts';
import { largest } from '../../files/read.ts';
import { harmlessJson } from '../../report/json.ts';
import { checkSheet } from '../../sheet/check.ts';
import { parseSheet } from '../../sheet/parse.ts';
import { BadSheet } from '../../sheet/problem.ts';
import { version } from '../assets/version.ts';
import { today } from '../options/values.ts';
import type { JudgeFlags } from '../sheet/judge-sheet.ts';
import { type Filled, fill, type LineBuffer } from './line-buffer.ts';

/** A line of a stream of sheets, counted from 1, and the buffer for what is printed for it. */
export interface Line {
	readonly text: string;
	readonly line: number;
	readonly buffer: LineBuffer;
}

/** What is printed for a line, and whether it was no sheet. */
export interface JudgedLine extends Filled {
	readonly bad: boolean;
}

const tooLong = new BadSheet([{ path: 'sheet', found: 'a line of more than 16 MB', accepted: 'one sheet a line' }]);

/** The audit of one line without draws, or what is wrong with it, as a line of JSON. */
export function judgeLine(model: Model, { text, line, buffer }: Line, flags: JudgeFlags): JudgedLine {
	const { json, bad } = jsonOf(model, { text, line }, flags);
	const plain = fill(buffer, json);
	// Where each character became one byte nothing is beyond ASCII: to look for that is a tenth of the work of looking at each.
	const isHarmless = plain.length === json.length + 1 && !json.includes('\u007f');
	const { buffer: filled, length } = isHarmless ? plain : fill(plain.buffer, harmlessJson(json));
	return { buffer: filled, length, bad };
}

function jsonOf(model: Model, { text, line }: Omit<Line, 'buffer'>, flags: JudgeFlags): { json: string; bad: boolean } {
	try {
		if (text.length > largest) throw tooLong;
		const checked = checkSheet(parseSheet(text), model.rulebook.questions);
		const units = flags.units ?? checked.sheet.units;
		const { audit } = assess(model, checked, { date: flags.date ?? today(), units, tool: version, draws: 0 });
		return { json: JSON.stringify(audit), bad: false };
	} catch (error) {
		if (!(error instanceof BadSheet)) throw error;
		return { json: JSON.stringify({ line, error: error.message }), bad: true };
	}
}
