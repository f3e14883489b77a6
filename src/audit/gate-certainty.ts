import { slotNamed } from '../graph/graph.ts';
import type { Points } from '../graph/latin-hypercube.ts';
import { reach } from '../graph/paths.ts';
import type { Sampler } from '../graph/sampling.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import type { Verdict } from '../rulebook/judge.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { AuditOptions } from './audit.ts';
import { type Certainty, certaintyOf, slotsRead } from './certainty.ts';
import type { LoggedState } from './logged.ts';
import type { Model } from './model.ts';
import { isSerious } from './stages.ts';
import { sureEnough } from './unproved.ts';

/**
 * How sure each verdict is where stages are decided: by as many draws as those take, whatever number was asked for. A usual
 * value that no question asks stays put there: nobody could prove it. So does a band that only the running car shows: the line
 * that asks for it says so, and a second one need not wait for it.
 */
export function sureForGates(
	model: Model,
	sheet: Sheet,
	state: LoggedState,
	verdicts: readonly Verdict[],
	{
		options,
		certainty,
		points,
	}: {
		options: Pick<AuditOptions, 'draws' | 'gateDraws'>;
		certainty: Certainty;
		points?: ((sampler: Sampler) => Points) | undefined;
	},
): readonly (number | null)[] {
	const { draws, gateDraws = draws } = options;
	if (gateDraws === 0) return [];
	const counts = ({ verdict, rule }: Verdict) => verdict === 'holds' && isSerious(rule);
	const { sure } =
		gateDraws === draws
			? certainty
			: certaintyOf(model, sheet, state, verdicts, gateDraws, { pointsFor: points, only: counts });
	const unsure = (verdict: Verdict, at: number) => counts(verdict) && (sure[at] ?? 1) < sureEnough;
	if (!verdicts.some(unsure)) return sure;
	const shown = model.quantities.flatMap(({ id, shownBy }) => (shownBy ? [slotNamed(state.graph, id)] : []));
	const moved = reach(shown, slot => state.graph.readers[slot]!);
	const rests = ({ assumed, rule }: Verdict) =>
		assumed.some(name => model.judge.usualBehind(name) === 'quantity') ||
		slotsRead(new Set([rule]), state).some(slot => moved.has(slot));
	const doubtful = (verdict: Verdict, at: number) => unsure(verdict, at) && rests(verdict);
	if (!verdicts.some(doubtful)) return sure;
	const asked = { ...model, quantities: model.quantities.filter(quantity => !standsByItself(quantity)) };
	const proved = certaintyOf(asked, sheet, state, verdicts, gateDraws, { pointsFor: points, only: doubtful }).sure;
	return verdicts.map((verdict, at) => (doubtful(verdict, at) ? proved[at]! : (sure[at] ?? null)));
}

/** Whether a quantity is a usual value that no question asks, or its band one that driving shows. */
const standsByItself = (quantity: AnyQuantity): boolean =>
	quantity.shownBy !== undefined ||
	('value' in quantity ? quantity.standsFor === undefined : 'assumes' in quantity && quantity.assumes === true);
