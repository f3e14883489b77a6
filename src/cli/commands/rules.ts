import { readPreferences } from '../../files/preferences.ts';
import { quantities } from '../../log/quantities.ts';
import { modelGraph } from '../../quantities/model-graph.ts';
import { runExamples, withoutPrefills } from '../../rulebook/examples.ts';
import { namesRead } from '../../rulebook/reads.ts';
import type { Harm, Rule, Rulebook } from '../../rulebook/rulebook.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { placeWords } from '../../wording/places.ts';
import { stageTitles } from '../../wording/stages.ts';

import { Wording } from '../../wording/template.ts';
import { readAsset, readRulebookWithExamples } from '../assets/assets.ts';
import { withPacks } from '../assets/packs.ts';
import { unknownId } from '../options/suggest.ts';
import { exit } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';

const rulebookOf = (paths: readonly string[]): Rulebook =>
	paths.length > 0 ? withPacks(paths) : readRulebookWithExamples();

/** `swap-audit rules list`: a line a rule. */
export function list(paths: readonly string[]): number {
	const { rules, changed } = rulebookOf(paths);
	print(
		rules
			.map(({ id, stage, harm, title }) => `${id.padEnd(48)} ${stage.padEnd(6)} ${harm.padEnd(8)} ${title}`)
			.join('\n'),
	);
	for (const { rule, pack, fields } of changed)
		printMessage(`${rule}: ${fields.join(', ')} changed by the pack ${pack}`);
	return exit.done;
}

/** `swap-audit rules show ID`: one rule in words. */
export async function show(id: string, paths: readonly string[], units?: UnitSet): Promise<number> {
	const rulebook = rulebookOf(paths);
	const rule = rulebook.rules.find(other => other.id === id);
	if (!rule) throw unknownId('rule', id, rulebook.rules, 'swap-audit rules list');
	print(inWords(rule, rulebook, units ?? (await readPreferences(process.env)).units ?? 'us'));
	return exit.done;
}

const harmWords: Readonly<Record<Harm, string>> = {
	person: 'a person is hurt',
	engine: 'the engine is damaged',
	strands: 'the car leaves you stranded',
	wear: 'something wears out early',
	annoys: 'a nuisance',
};

function inWords(rule: Rule, rulebook: Rulebook, units: UnitSet): string {
	const wording = new Wording(rulebook.questions, quantities, units);
	const limits = Object.entries(rule.thresholds).map(([name, { value }]) => {
		const constant = value[0] === 'value' ? wording.show(name, value[1], rule) : null;
		return `  ${name}: ${constant ?? (value[0] === 'name' ? value[1] : 'computed')}`;
	});
	const part = (title: string, lines: readonly string[]) => (lines.length > 0 ? [`${title}:`, ...lines] : []);
	return [
		`${rule.id}: ${rule.title}`,
		`When: ${rule.stage === 'tidy' ? 'any time' : stageTitles[rule.stage].toLowerCase()}. At stake: ${harmWords[rule.harm]}.`,
		`Where: ${placeWords[rule.access].toLowerCase()}, ${rule.minutes} min.`,
		...part(
			'First',
			rule.needs.map(need => `  ${need}`),
		),
		...part('Reads', [`  ${[...namesRead(rule)].filter(name => !Object.hasOwn(rule.thresholds, name)).join(', ')}`]),
		...part('Thresholds', limits),
		...part('Why', [`  ${wording.say(rule.why)}`]),
		...part(
			'Do',
			rule.do.map(step => `  - ${wording.say(step)}`),
		),
		...part('Prove', [`  ${wording.say(rule.prove)}`]),
		...part(
			'Parts',
			rule.parts.map(id => `  - ${rulebook.parts.find(known => known.id === id)?.title ?? id}`),
		),
		...part(
			'Cautions',
			rule.cautions.map(id => `  ${rulebook.cautions.find(caution => caution.id === id)?.title ?? id}`),
		),
		...part(
			'Source',
			rule.source.map(source => `  ${rulebook.sources[source] ?? source}`),
		),
		`Examples: ${rule.examples.length}`,
	].join('\n');
}

/** `swap-audit rules schema`: what an editor needs to complete and check a topic file or a pack. */
export function schema(): number {
	print(readAsset('topic.schema.json'));
	return exit.done;
}

/** `swap-audit rules test`: runs every example; status 1 when one comes out otherwise than it says. */
export function test(paths: readonly string[]): number {
	const rulebook = withoutPrefills(rulebookOf(paths));
	const graph = modelGraph(rulebook.questions, quantities);
	const wrong = runExamples(rulebook, graph);
	process.exitCode = wrong.length > 0 ? exit.notPassed : exit.done;
	for (const { at, rule, wanted, got } of wrong) print(`${at}: ${rule}: wanted ${wanted}; got ${got}`);
	const examples = rulebook.rules.reduce((sum, rule) => sum + rule.examples.length, 0);
	print(`${rulebook.rules.length} rules, ${examples} examples, ${wrong.length} wrong`);
	return process.exitCode;
}
