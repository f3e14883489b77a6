import type { State } from '../../graph/solve.ts';
import { withFigures } from '../logged.ts';
import { isGrave, type JudgedPull, pullsOf } from './clean-pulls.ts';
import type { StepInput } from './step-input.ts';

/** What a log found wrong that can harm engine or people, and no later one has shown to be right. */
export function wrongIn({ model, logs }: StepInput, plain: State): string[] {
	const decided = new Set<string>();
	return [...logs].reverse().flatMap(({ name, quantities }) => {
		const judged = model.judge.judge(withFigures(model, plain, quantities), null, ({ section }) => section === 'log');
		const fails = judged.filter(one => isGrave(one) && one.verdict === 'fails' && !decided.has(one.rule.id));
		for (const { rule, verdict } of judged) if (verdict === 'fails' || verdict === 'holds') decided.add(rule.id);
		return [...new Set(fails.map(({ rule }) => rule.title))].map(title => `In the log ${name}: ${title}.`);
	});
}

/** The clean pulls that a step starts from. */
export interface CleanPulls {
	/** The lower peak of the last two, Pa. */
	readonly base: number;
	readonly highest: JudgedPull & { readonly peak: number };
}

/** The last two clean pulls since any answer that they rest on changed, and the highest; or what is wrong with the last ones. */
export function cleanPulls({ model, logs }: StepInput, plain: State, refused: string[]): CleanPulls | null {
	const all = logs.flatMap(({ quantities, changed }, log) =>
		changed.length > 0 ? [] : pullsOf(model.judge, withFigures(model, plain, quantities), quantities, log),
	);
	const clean = all.filter((one): one is CleanPulls['highest'] => one.faults.length === 0 && one.peak !== null);
	if (clean.length >= 2) {
		const [one, other] = clean.slice(-2);
		return {
			base: Math.min(one!.peak, other!.peak),
			highest: clean.reduce((most, next) => (next.peak > most.peak ? next : most)),
		};
	}
	for (const { name, changed } of logs)
		if (changed.length > 0)
			refused.push(`The log ${name} was made before a change of ${changed.join(', ')}: its pulls no longer count.`);
	refused.push(`${clean.length === 0 ? 'No clean pull yet' : 'One clean pull only'}, and a step needs two.`);
	refused.push(...wrongWith(all.filter(({ faults }) => faults.length > 0).slice(-2), logs));
	return null;
}

/** What is wrong with pulls, a text each; what is wrong with two of one log stands once. */
function wrongWith(pulls: readonly JudgedPull[], logs: StepInput['logs']): string[] {
	return logs.flatMap(({ name }, log) => {
		const own = pulls.filter(pull => pull.log === log);
		return [...new Set(own.flatMap(({ faults }) => faults))].map(fault => {
			const numbers = own.filter(({ faults }) => faults.includes(fault)).map(({ pull }) => pull);
			return `${numbers.length > 1 ? 'Pulls' : 'Pull'} ${numbers.join(' and ')} of ${name}: ${fault}.`;
		});
	});
}
