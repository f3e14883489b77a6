import { asked } from '../../src/interview/queue.ts';
import { questionAt, type State } from '../../src/interview/state.ts';
import type { Event } from '../../src/interview/step.ts';
import type { Question } from '../../src/sheet/question.ts';
import type { Answer } from '../../src/sheet/sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { rulebook } = testModel();
const builds = [buildSheet('boosted'), buildSheet('unboosted')];

/** What people, cats and other programs type into a field that asks for something else. */
const strange = [
	'',
	' ',
	'much',
	'-5',
	'1e309',
	'3,780',
	'1,5',
	'3/8',
	'a',
	'b',
	'none',
	'1 2 3',
	'9 9, 8',
	'\u202e12',
	'__proto__',
	'\ud83d\udd27',
	'12 furlongs',
	'0',
	'4',
	'12',
	'NaN',
	'x'.repeat(300),
];

/** Does one thing that a person may do, by chance: mostly answers, some of them strange, and every way of moving about. */
export function randomEvent(state: State, random: () => number): Event {
	const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
	const chance = random();
	const question = questionAt(state);
	if (!question) {
		if (chance < 0.4) return { do: 'back' };
		if (chance < 0.6) return { do: 'section', section: pick(rulebook.sections).id };
		if (chance < 0.98) return { do: 'go', id: pick(asked({ ...state, pass: 'full', section: null })).id };
		return { do: 'recheck', touched: [pick(rulebook.sections).id, pick(rulebook.questions).id] };
	}
	if (chance < 0.15) return typed(question, random);
	if (chance < 0.17) return { do: 'not-known' };
	if (chance < 0.18) return { do: 'clear' };
	if (chance < 0.19) return { do: 'note', text: pick(['', 'looked twice', 'x']) };
	if (chance < 0.55) return { do: 'enter', text: pick(strange) };
	if (chance < 0.8) return { do: 'back' };
	if (chance < 0.87) return { do: 'later' };
	if (chance < 0.94) return { do: 'section', section: pick(rulebook.sections).id };
	if (chance < 0.97) return { do: 'go', id: pick(rulebook.questions).id };
	if (chance < 0.98) return { do: 'go', id: 'no.such' };
	return pick([{ do: 'review' }, { do: 'retype' }] as const);
}

/** An answer that fits: a choice, or what one of the named builds has. */
function typed(question: Question, random: () => number): Event {
	const ids = Object.keys(question.choices);
	// What decides most about what else is asked is answered often in every way.
	if (question.kind === 'choice') return { do: 'enter', text: ids[Math.floor(random() * ids.length)]! };
	const [section, name] = question.id.split('.') as [string, string];
	const answer = builds[random() < 0.5 ? 0 : 1]!.answers[section]?.[name] as Answer | undefined;
	if (question.id === 'engine.cylinders') return { do: 'enter', text: random() < 0.5 ? '8' : '6' };
	const text = answer && answer.value !== undefined ? asTyped(question, answer) : undefined;
	return text === undefined ? { do: 'not-known' } : { do: 'enter', text };
}

/** An answer as a person types it. */
function asTyped({ kind }: Question, { value, unit }: Answer): string {
	const units = unit === undefined ? [] : [unit].flat();
	const rows = value as unknown[][];
	switch (kind) {
		case 'several':
		case 'codes':
			return [value].flat().join(', ') || 'none';
		case 'per-cylinder':
			return `${(value as (number | null)[]).map(reading => reading ?? '-').join(' ')} ${units[0]}`;
		case 'firing-order':
			return (value as number[]).join('-');
		case 'curve':
			return rows.map(([x, y]) => `${x} ${units[0]} ${y} ${units[1]}`).join('\n');
		case 'pairs':
		case 'loads':
			return rows.map(row => row.join(' ')).join(', ');
		case 'circuits':
			return 'check lamp;;;done';
		default:
			return `${value} ${units[0] ?? ''}`;
	}
}
