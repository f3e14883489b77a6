import type { LogReport } from '../audit/log-report.ts';
import type { Model } from '../audit/model.ts';
import { takeLog } from '../audit/take-log.ts';
import { type ColumnChoices, noChoices, parseMapping } from '../log/column-mapping.ts';
import type { LogColumns } from '../log/columns.ts';
import type { LogProgress } from '../log/progress.ts';
import { loggedAnswerWords } from '../report/log/answers.ts';
import type { Sheet } from '../sheet/sheet.ts';

/** What reading a log takes of the machine. */
export interface LogFace {
	isForPerson(error: unknown): error is Error;
	lookAtLog(sheet: Sheet, path: string, choices: ColumnChoices): Promise<LogColumns>;
	judgeLog(sheet: Sheet, path: string, choices: ColumnChoices, progress: LogProgress): Promise<LogReport>;
}

interface Lines {
	/** The next line typed; null at the end of input. */
	next(): Promise<string | null>;
	say(text: string): void;
	/** What stands before a line to be typed. */
	mark(words: string): void;
}

const columnsPrompt =
	'[log.columns] yes reads it whole; NAME=HEADER@UNIT says what a column is, as oil_pressure=P1@psi; not HEADER leaves one alone; - leaves the log';
const answersPrompt = '[log.answers] Which are taken? Numbers with commas, all, or none; - leaves the log';

/** Reads a log by lines: its columns, what it contradicts, the answers. Null where it was left, or not to be read. */
export async function logByLines(
	model: Model,
	sheet: Sheet,
	path: string,
	face: LogFace,
	lines: Lines,
): Promise<Sheet | null> {
	try {
		const said = await columnsByLines(model, sheet, path, face, lines);
		const report = said && (await face.judgeLog(sheet, path, said, progressByLines(lines)));
		return report && (await answersByLines(sheet, report, lines));
	} catch (error) {
		if (!face.isForPerson(error)) throw error;
		lines.say(error.message);
		return null;
	}
}

/** Says once that the model is fitted: a line, not a bar that moves, for whoever listens. */
function progressByLines({ say }: Lines): LogProgress {
	let said = false;
	return {
		read() {},
		fitted() {
			if (!said) say('Fitting the model to this car: some seconds.');
			said = true;
			return true;
		},
	};
}

async function columnsByLines(
	model: Model,
	sheet: Sheet,
	path: string,
	face: LogFace,
	{ next, say, mark }: Lines,
): Promise<ColumnChoices | null> {
	let choices = noChoices;
	let found = await face.lookAtLog(sheet, path, choices);
	for (;;) {
		sayColumns(found, model, say);
		say(columnsPrompt);
		mark('');
		const line = (await next())?.trim();
		if (line === undefined || line === '-') return null;
		if (/^y(es)?$/i.test(line)) return choices;
		const mapping = parseMapping(line);
		const [, ignored] = /^not\s+(.+)$/i.exec(line) ?? [];
		if (!mapping && ignored === undefined) {
			say(`${JSON.stringify(line)} is none of these.`);
			continue;
		}
		const changed: ColumnChoices = mapping
			? {
					...choices,
					mappings: [...choices.mappings.filter(({ channel }) => channel !== mapping.channel), mapping],
				}
			: { ...choices, ignored: [...choices.ignored, ignored!] };
		try {
			found = await face.lookAtLog(sheet, path, changed);
			choices = changed;
		} catch (error) {
			if (!face.isForPerson(error)) throw error;
			say(error.message);
		}
	}
}

function sayColumns({ columns, notes }: LogColumns, { rulebook }: Model, say: Lines['say']): void {
	const titles = new Map(rulebook.channels.map(({ id, title }) => [id, title]));
	for (const { header, taken, first } of columns) {
		const as = taken ? `${titles.get(taken.channel)} (${taken.channel}), ${taken.unit || 'no unit'}` : 'not used';
		say(`${header}: ${as}; first: ${first.join('; ') || 'empty'}`);
	}
	for (const note of notes) say(note);
}

async function answersByLines(sheet: Sheet, report: LogReport, { next, say, mark }: Lines): Promise<Sheet | null> {
	const { findings, answers } = report.json;
	const fails = findings.filter(({ verdict }) => verdict === 'fails');
	say(fails.length === 0 ? 'No rule on logs fails.' : `${fails.length} to do:`);
	for (const { title, subject, do: steps } of fails)
		say(`! ${title}${subject === null ? '' : ` (pull ${subject})`}. ${steps.join(' ')}`);
	if (answers.length === 0) {
		say('It settles no answer; it is kept in the sheet.');
		return takeLog(sheet, report, () => false);
	}
	for (const [at, answer] of answers.entries()) {
		const { label, now, before, by_hand } = loggedAnswerWords(report, answer);
		say(`${at + 1} ${label}: ${now} (was: ${before}${by_hand ? ', measured by hand' : ''})`);
	}
	for (;;) {
		say(answersPrompt);
		mark('');
		const line = (await next())?.trim().toLowerCase();
		if (line === undefined || line === '-') return null;
		const numbers =
			line === 'none' ? [] : line === 'all' ? answers.map((_, at) => at + 1) : line.split(/[\s,]+/).map(Number);
		if (numbers.every(number => Number.isInteger(number) && number >= 1 && number <= answers.length))
			return takeLog(sheet, report, id => numbers.some(number => answers[number - 1]!.answer === id));
		say(`Numbers from 1 to ${answers.length} are taken here.`);
	}
}
