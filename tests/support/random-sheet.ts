import type { Graph } from '../../src/graph/graph.ts';
import { slotNamed } from '../../src/graph/graph.ts';
import { solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { type Question, standAlone } from '../../src/sheet/question.ts';
import { type Answer, type Sheet, splitId, withAnswer } from '../../src/sheet/sheet.ts';
import { unitNamed } from '../../src/units/names.ts';
import { fromCanonical } from '../../src/units/unit.ts';
import { buildSheet } from './model.ts';

/**
 * A full sheet of another build: about half the answers of a named one changed, every answer in effect, and no two of
 * them that contradict each other.
 */
export function randomSheet(
	rulebook: Rulebook,
	graph: Graph,
	random: () => number,
	of = random() < 0.5 ? ('boosted' as const) : ('unboosted' as const),
): Sheet {
	const start = buildSheet(of, rulebook);
	const answers = Object.fromEntries(
		Object.entries(start.answers).map(([section, inside]) => [section, { ...inside }]),
	);
	for (const question of rulebook.questions) {
		const [section, name] = splitId(question.id);
		const answer = random() < 0.5 ? randomAnswer(question, random) : null;
		if (answer) (answers[section] ??= {})[name] = answer;
	}
	return agreeing(inEffect({ ...start, answers }, rulebook, graph), rulebook, graph);
}

/** What some answers state and others make up: where both are there, the second is made to say what the first does. */
const statedTwice = [
	['engine.displacement_stated', 'cu in', (read: Read) => read('engine.displacement_from_bore')],
	['engine.compression_ratio', ':1', (read: Read) => read('engine.ratio_from_volumes')],
	['fuel.pump_voltage', 'V', (read: Read) => read('charging.voltage_running') - read('fuel.pump_wire_drop')],
] as const;

const parts = [
	'engine.displacement_from_bore',
	'engine.ratio_from_volumes',
	'charging.voltage_running',
	'fuel.pump_wire_drop',
];

type Read = (id: string) => number;

function agreeing(sheet: Sheet, rulebook: Rulebook, graph: Graph): Sheet {
	const { values } = solve(graph, givenAnswers(sheet, rulebook.questions), new Map(), parts);
	const read = (id: string) => Number(values[slotNamed(graph, id)] ?? Number.NaN);
	return statedTwice.reduce((now, [id, symbol, made]) => {
		const kept = made(read);
		if (!Number.isFinite(kept)) return now;
		const unit = unitNamed(symbol)!;
		return withAnswer(now, id, { value: fromCanonical(kept, unit), unit: symbol, known: 'measured' });
	}, sheet);
}

/** The sheet without the answers that are not in effect; taking one away may put out another. */
function inEffect(sheet: Sheet, rulebook: Rulebook, graph: Graph): Sheet {
	for (let now = sheet; ; ) {
		const given = givenAnswers(now, rulebook.questions);
		const { values } = solve(graph, given, new Map(), [...given.keys()]);
		const idle = [...given.keys()].filter(id => values[slotNamed(graph, id)] === null);
		if (idle.length === 0) return now;
		const answers = Object.entries(now.answers).map(([section, inside]) => [
			section,
			Object.fromEntries(Object.entries(inside).filter(([name]) => !idle.includes(`${section}.${name}`))),
		]);
		now = { ...now, answers: Object.fromEntries(answers) };
	}
}

/** A plausible answer; null for a kind that is left as the named build has it. */
function randomAnswer(question: Question, random: () => number): Answer | null {
	const choices = Object.keys(question.choices);
	const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
	switch (question.kind) {
		case 'choice':
			return { value: pick(choices) };
		case 'several': {
			const alone = choices.filter(choice => standAlone.includes(choice));
			if (alone.length > 0 && random() < 0.3) return { value: [pick(alone)] };
			return { value: choices.filter(choice => !alone.includes(choice) && random() < 0.4) };
		}
		case 'whole': {
			const [low, high] = question.plausible!;
			return { value: Math.round(low + random() * (high - low)) };
		}
		case 'codes':
			return { value: ['P0340', 'P0171', 'P1999'].filter(() => random() < 0.5) };
		default: {
			const [kind] = question.of;
			const unit = kind && unitNamed(question.unit.us[0]!, [kind]);
			if (question.kind !== kind || !unit || unit.curve || unit.refuses || !question.plausible) return null;
			const [low, high] = question.plausible;
			const typed = Number(fromCanonical(low + random() * (high - low), unit).toPrecision(3));
			return { value: typed, unit: unit.symbol, known: 'measured' };
		}
	}
}
