import type { State } from '../graph/solve.ts';
import { nineOfTen, type Uncertain } from '../graph/uncertain.ts';
import { logQuantities } from '../log/all.ts';
import { uncertainSlots } from '../quantities/uncertainty.ts';
import type { Question } from '../sheet/question.ts';
import { answerTo, type Sheet } from '../sheet/sheet.ts';
import { isAsLogged } from './log-answers.ts';
import type { Model } from './model.ts';

/** Everything uncertain in the car of a solved sheet. */
export function uncertaintyOf(
	{ rulebook, quantities, graph }: Pick<Model, 'rulebook' | 'quantities' | 'graph'>,
	sheet: Sheet,
	state: State,
): Uncertain[] {
	const uncertain = uncertainSlots(rulebook.questions, quantities, state, id => answerTo(sheet, id));
	const { volts, volts_apart: apart } = rulebook.episodes?.sensor_error ?? { volts: 0, volts_apart: 0 };
	const together = new Set(
		rulebook.questions
			.filter(question => readsVolts(question) && isAsLogged(question, sheet))
			.map(({ id }) => graph.slotOf.get(id)!),
	);
	const whole = Math.hypot(volts, apart);
	return together.size < 2 || whole === 0
		? uncertain
		: uncertain.map(one => (together.has(one.slot) ? asOne(one, [volts / whole, apart / whole]) : one));
}

const readsVolts = ({ logged }: Question): boolean =>
	logged !== null && logQuantities.find(({ id }) => id === logged)?.sensor === 'supply_volts';

/** Volts that one instrument read: what it is off moves all of them alike, and what each input is off its own alone. */
const asOne = (one: Uncertain, [shared, own]: readonly [number, number]): Uncertain => ({
	...one,
	figure: 'volts of the logs',
	alone: true,
	apply: (value, z, first, alone = 0) =>
		(value as number) + (one.difference / nineOfTen) * (shared * z[first]! + own * alone),
});
