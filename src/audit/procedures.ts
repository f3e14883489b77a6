import type { Step } from '../rulebook/rulebook.ts';
import type { Assessment } from './assess.ts';
import { conditionIn, valueIn } from './conditions.ts';

/** A step of a procedure with its numbers filled in. */
export interface FittedStep {
	readonly do: string;
	readonly read: string;
	readonly stop: string;
	readonly cautions: readonly string[];
}

export interface FittedProcedure {
	readonly title: string;
	readonly ready: boolean;
	readonly steps: readonly FittedStep[];
}

/** The procedures that fit the answers: a step stays unless it is known not to apply. */
export function fittedProcedures({ model, state, wording, audit }: Omit<Assessment, 'verdicts'>): FittedProcedure[] {
	const unboosted = valueIn(state, 'boost.kind') === 'none';
	return model.rulebook.procedures
		.filter(({ stage }) => !(stage === 'boost' && unboosted))
		.map(({ title, stage, steps }) => {
			const until = audit.stages.slice(0, audit.stages.findIndex(other => other.stage === stage) + 1);
			const fill = (text: string) => wording.fill(text, name => valueIn(state, name));
			const fitted = (step: Step): FittedStep => ({
				do: fill(step.do),
				read: fill(step.read),
				stop: fill(step.stop),
				cautions: step.cautions,
			});
			return {
				title,
				ready: until.every(({ ready }) => ready),
				steps: steps
					.filter(({ applies }) => conditionIn(state, applies) !== false && conditionIn(state, applies) !== null)
					.map(fitted)
					.filter(step => step.do !== ''),
			};
		});
}
