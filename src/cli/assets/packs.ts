import { mostOfPack, readTexts } from '../../files/packs.ts';
import { quantities } from '../../log/quantities.ts';
import { modelGraph } from '../../quantities/model-graph.ts';
import { addPacks } from '../../rulebook/compile/pack.ts';
import { writeProblem } from '../../rulebook/compile/source.ts';
import { runExamples, withoutPrefills } from '../../rulebook/examples.ts';
import type { Rulebook } from '../../rulebook/rulebook.ts';
import { BadUsage } from '../process/exit.ts';
import { printMessage } from '../process/output.ts';
import { readRulebookWithExamples } from './assets.ts';

/** The built rulebook with rule packs added. Throws BadUsage with every problem of every file, its place and its line. */
export function withPacks(paths: readonly string[]): Rulebook {
	const texts = paths.flatMap(path => readTexts(path, ['.yaml', '.yml'], mostOfPack));
	if (texts.length === 0) throw new BadUsage(`${paths.join(', ')}: no rule pack there, which is a .yaml file`);
	const { rulebook, problems, warnings } = addPacks(readRulebookWithExamples(), texts, quantities);
	if (problems.length > 0) throw new BadUsage(problems.map(writeProblem).join('\n'));
	for (const warning of warnings) printMessage(`warning: ${writeProblem(warning)}`);
	return rulebook;
}

/**
 * The same, to judge by. Throws BadUsage too when a rule that a pack added or changed does not come out as its examples say.
 */
export function withProvenPacks(paths: readonly string[]): Rulebook {
	const rulebook = withPacks(paths);
	const own = new Set(readRulebookWithExamples().rules.map(({ id }) => id));
	for (const { rule } of rulebook.changed) own.delete(rule);
	const bare = withoutPrefills(rulebook);
	const rules = bare.rules.filter(({ id }) => !own.has(id));
	const wrong = runExamples(bare, modelGraph(bare.questions, quantities), rules);
	if (wrong.length > 0)
		throw new BadUsage(
			wrong.map(({ at, rule, wanted, got }) => `${at}: ${rule}: wanted ${wanted}; got ${got}`).join('\n'),
		);
	return rulebook;
}
