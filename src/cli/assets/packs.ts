import { readTexts } from '../../files/packs.ts';
import { quantities } from '../../log/quantities.ts';
import { addPacks } from '../../rulebook/compile/pack.ts';
import { writeProblem } from '../../rulebook/compile/source.ts';
import type { Rulebook } from '../../rulebook/rulebook.ts';
import { BadUsage } from '../process/exit.ts';
import { readRulebookWithExamples } from './assets.ts';

/** The built rulebook with rule packs added. Throws BadUsage with every problem of every file, its place and its line. */
export function withPacks(paths: readonly string[]): Rulebook {
	const texts = paths.flatMap(path => readTexts(path, ['.yaml', '.yml']));
	if (texts.length === 0) throw new BadUsage(`--rules: no .yaml file in ${paths.join(', ')}`);
	const { rulebook, problems } = addPacks(readRulebookWithExamples(), texts, quantities);
	if (problems.length > 0) throw new BadUsage(problems.map(writeProblem).join('\n'));
	return rulebook;
}
