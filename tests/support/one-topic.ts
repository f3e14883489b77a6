import { quantities } from '../../src/log/quantities.ts';
import type { Compilation } from '../../src/rulebook/compile/compile.ts';
import { addPacks } from '../../src/rulebook/compile/pack.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { ruleTexts, testModel } from './model.ts';

/** A topic file of rules/ that can be compiled again and again, changed, against all the others: a hundred times faster. */
export interface OneTopic {
	readonly path: string;
	readonly text: string;
	compile(text: string): Compilation;
}

/** The topic file at a path of rules/. */
export function oneTopic(path: string): OneTopic {
	const text = ruleTexts().find(file => file.path === path)!.text;
	const topic = /^topic: (.*)$/m.exec(text)![1]!.replace(/^["'](.*)["']$/, '$1');
	const rest = without(topic);
	return { path, text, compile: changed => addPacks(rest, [{ path, text: changed }], quantities) };
}

/** Every topic file of rules/. */
export function everyTopic(): OneTopic[] {
	const sections = testModel().rulebook.sections.map(({ id }) => id);
	return ruleTexts()
		.map(({ path }) => path)
		.filter(path => path.includes('/') && sections.includes(path.split('/')[0]!))
		.map(oneTopic);
}

function without(topic: string): Rulebook {
	const { rulebook } = testModel();
	if (!rulebook.topics.some(other => other.topic === topic)) throw new Error(`no topic ${topic}`);
	return {
		...rulebook,
		topics: rulebook.topics.filter(other => other.topic !== topic),
		questions: rulebook.questions.filter(other => other.topic !== topic),
		rules: rulebook.rules.filter(other => other.topic !== topic),
	};
}
