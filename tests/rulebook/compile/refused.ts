import { expect } from 'vitest';
import { writeProblem } from '../../../src/rulebook/compile/source.ts';
import { type OneTopic, oneTopic } from '../../support/one-topic.ts';

/** A way of spoiling a rule file. */
export type Change = (text: string) => string;

/** The topic that most faults are put into. */
export const gap = oneTopic('ignition/gap.yaml');

/** Sets a field of the first rule. */
export const set =
	(key: string, value: string): Change =>
	text =>
		text.replace(new RegExp(`^    ${key}: .*$`, 'm'), `    ${key}: ${value}`);

/** Puts one text for another, once. */
export const swap =
	(old: string | RegExp, by: string): Change =>
	text =>
		text.replace(old, by);

/** Checks that one of the problems has the message, in the file, with line, column, the line itself and a mark in it. */
export function expectRefused(problems: readonly string[], path: string, message: RegExp): void {
	expect(problems.join('\n')).toMatch(message);
	const fault = problems.find(problem => message.test(problem))!;
	expect(fault).toMatch(new RegExp(`^${path}:\\d+:\\d+: .*\\n +\\d+ \\| .*\\n +\\| *\\^$`));
	const [, line, column] = /:(\d+):(\d+): /.exec(fault)!;
	expect(fault).toContain(`\n${line!.padStart(5)} | `);
	expect(Number(column)).toBeGreaterThan(0);
}

/** Checks that a change of a topic file is refused. */
export function expectRefusedTopic(change: Change, message: RegExp, topic: OneTopic = gap): void {
	const changed = change(topic.text);
	expect(changed, 'the change must change something').not.toBe(topic.text);
	expectRefused(topic.compile(changed).problems.map(writeProblem), topic.path, message);
}
