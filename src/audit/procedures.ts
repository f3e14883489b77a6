import { type State, valueIn } from '../graph/solve.ts';
import type { Step } from '../rulebook/procedure.ts';
import type { Stage } from '../rulebook/rulebook.ts';
import type { Text } from '../sheet/text.ts';
import type { Assessment } from './assess.ts';
import { conditionIn } from './conditions.ts';
import { gateOpen } from './stages.ts';

/** A step of a procedure with its numbers filled in. */
export interface FittedStep {
	readonly do: string;
	readonly read: string;
	readonly stop: string;
	readonly cautions: readonly string[];
}

/** A procedure as this car is to follow it; `ready`: whether its stage is. */
export interface FittedProcedure {
	readonly title: string;
	readonly stage: Stage;
	readonly ready: boolean;
	readonly steps: readonly FittedStep[];
}

/** Whether a step is shown: unless it is known not to apply, and with `only_when` only where that is known. */
function fits(state: State, { applies, only_when }: Step): boolean {
	const own = conditionIn(state, applies);
	return own !== false && own !== null && conditionIn(state, only_when) === true;
}

/** The procedures that fit the answers. */
export function fittedProcedures({ model, state, wording, audit }: Omit<Assessment, 'verdicts'>): FittedProcedure[] {
	const unboosted = valueIn(state, 'boost.kind') === 'none';
	return model.rulebook.procedures
		.filter(({ stage }) => !(stage === 'boost' && unboosted))
		.map(({ title, stage, steps }) => {
			const fill = (text: Text) => wording.fill(text, name => valueIn(state, name));
			const fitted = (step: Step): FittedStep => ({
				do: fill(step.do),
				read: fill(step.read),
				stop: fill(step.stop),
				cautions: step.cautions,
			});
			return {
				title,
				stage,
				ready: gateOpen(audit.stages, stage),
				steps: steps
					.filter(step => fits(state, step))
					.map(fitted)
					.filter(step => step.do !== ''),
			};
		});
}
