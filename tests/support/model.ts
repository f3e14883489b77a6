import { createHash } from 'node:crypto';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Model, makeModel } from '../../src/audit/model.ts';
import { readTexts } from '../../src/files/packs.ts';
import { quantities } from '../../src/log/quantities.ts';
import { type Compilation, compileRulebook } from '../../src/rulebook/compile/compile.ts';
import type { SourceText } from '../../src/rulebook/compile/source.ts';
import { type ReadYaml, readYaml } from '../../src/rulebook/compile/yaml.ts';
import { sheetOf } from '../../src/rulebook/examples.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import type { Sheet } from '../../src/sheet/sheet.ts';

/** The folder of the project's own rules. */
export const rulesFolder = fileURLToPath(new URL('../../rules', import.meta.url));

let texts: readonly SourceText[] | undefined;

/** The texts of rules/, by path inside it. */
export function ruleTexts(): readonly SourceText[] {
	texts ??= readTexts(rulesFolder, ['.yaml']).map(({ path, text }) => ({ path: relative(rulesFolder, path), text }));
	return texts;
}

const read = new Map<string, ReadYaml>();

/** Compiles the files of rules/, some of them changed: those that are not are read once by all tests of a process. */
export const compileRules = (files: readonly SourceText[]): Compilation =>
	compileRulebook(files, quantities, text => {
		const known = read.get(text) ?? readYaml(text);
		read.set(text, known);
		return known;
	});

export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

let model: Model | undefined;

/** The model of the project's own rules, compiled once a test file. */
export function testModel(): Model {
	if (!model) {
		const { rulebook, problems } = compileRules(ruleTexts());
		if (problems.length > 0)
			throw new Error(problems.map(({ path, line, message }) => `${path}:${line} ${message}`).join('\n'));
		model = makeModel(rulebook, sha256);
	}
	return model;
}

/** A named build of rules/examples as a sheet. */
export const buildSheet = (name: 'boosted' | 'unboosted', rulebook: Rulebook = testModel().rulebook): Sheet =>
	sheetOf(name, rulebook.builds[name]!);
