import { start } from '../../src/interview/session.ts';
import { questionAt, type State } from '../../src/interview/state.ts';
import { type Event, step } from '../../src/interview/step.ts';
import type { Question } from '../../src/sheet/question.ts';
import { type Answer, emptySheet, type Sheet } from '../../src/sheet/sheet.ts';
import { textIn } from '../../src/sheet/text.ts';
import { wrap } from '../../src/text/wrap.ts';
import { testModel } from '../support/model.ts';
import type { Terminal } from '../support/terminal.ts';

const { rulebook } = testModel();

/**
 * A person at the keyboard, who answers as a named build would. The headless engine runs beside the terminal, so that
 * the person knows which question is in sight without reading the screen.
 */
export class Person {
	state: State;
	private readonly build: Readonly<Record<string, unknown>>;

	constructor(
		name: string,
		build: 'boosted' | 'unboosted',
		pass: 'quick' | 'full' = 'quick',
		sheet: Sheet = emptySheet(name),
	) {
		this.state = start(testModel(), sheet, pass);
		this.build = rulebook.builds[build]!;
	}

	/** The keys for the question in sight, as one string; and the engine moved on. */
	keys(): string | null {
		const question = questionAt(this.state);
		if (!question) return null;
		const { keys, event } = this.answer(question);
		this.state = step(this.state, event);
		return keys;
	}

	private answer(question: Question): { keys: string; event: Event } {
		const answer = this.build[question.id] as Answer | undefined;
		const text = answer && typed(question, answer);
		if (text === null || text === undefined) return { keys: '\u000e', event: { do: 'not-known' } };
		return { keys: `${text}\r`, event: { do: 'enter', text } };
	}

	/** The beginning of the question in sight as a window of a width shows it; null: none is left. */
	question(columns = 80): string | null {
		const question = questionAt(this.state);
		return question && wrap(textIn(question.ask, this.state.sheet.units), columns - 1)[0]!;
	}

	/** Answers everything that is left: a few questions ahead, then waiting until the screen has caught up. */
	async finish(terminal: Terminal): Promise<number> {
		let count = 0;
		for (let question = this.question(); question !== null; question = this.question()) {
			await terminal.sees(question);
			for (let ahead = 0; ahead < 4 && this.question() !== null; ahead++, count++) terminal.send(this.keys()!);
		}
		return count;
	}
}

/** An answer as a person types it; null for kinds that a test leaves at "not known". */
function typed(question: Question, { value, unit }: Answer): string | null {
	if (typeof value === 'string') return value;
	if (typeof value === 'number') return `${value} ${unit === '1' || unit === undefined ? '' : unit}`.trim();
	if (question.kind === 'several') return (value as string[]).length > 0 ? (value as string[]).join(', ') : 'none';
	if (question.kind === 'per-cylinder') return `${(value as number[]).join(' ')} ${unit}`;
	return null;
}
