import { describe, expect, test } from 'vitest';
import type { Procedure } from '../../src/rulebook/procedure.ts';
import { stages } from '../../src/rulebook/rulebook.ts';
import { type Text, textIn } from '../../src/sheet/text.ts';
import { testModel } from '../support/model.ts';

const { procedures, rules, questions, cautions } = testModel().rulebook;
const stageOf = new Map(rules.map(({ id, stage }) => [id, stage]));

const us = (text: Text) => textIn(text, 'us');
const saidIn = ({ steps }: Procedure) => steps.map(step => [step.do, step.read, step.stop].map(us).join(' '));

/** Every text that asks somebody to do something, with the place it stands at. */
const texts: readonly (readonly [string, string])[] = [
	...procedures.flatMap(procedure => saidIn(procedure).map(text => [procedure.title, text] as const)),
	...rules.flatMap(({ id, why, do: steps, prove }) => [why, prove, ...steps].map(text => [id, us(text)] as const)),
	...questions.map(({ id, how }) => [id, us(how)] as const),
	...cautions.map(({ id, words }) => [id, us(words)] as const),
];
const thatSay = (pattern: RegExp) => texts.filter(([, text]) => pattern.test(text));

describe('a step rests on what is settled', () => {
	test.each(procedures)('$title', ({ title, stage, steps }) => {
		for (const { relies } of steps)
			for (const id of relies)
				expect(stages.indexOf(stageOf.get(id)!), `${id} comes after ${stage}`).toBeLessThanOrEqual(
					stages.indexOf(stage),
				);
		// What comes before the controller is plugged in is measured with the battery off: it rests on nothing.
		if (title.startsWith('First ')) expect(steps.filter(({ relies }) => relies.length > 0).length).toBeGreaterThan(2);
	});

	test('what primes the rail rests on every rule about hose, joints, leaks and the feed of the pump', () => {
		const priming = procedures.flatMap(({ steps }) => steps.filter(step => /Key on for two seconds/.test(us(step.do))));
		expect(priming.length).toBe(2);
		for (const { relies } of priming)
			expect(relies).toEqual(
				expect.arrayContaining([
					'fuel.hose-not-for-injection',
					'fuel.hose-over-its-pressure',
					'fuel.worm-clamps',
					'fuel.leak-found',
					'fuel.leak-test-not-done',
					'fuel.pump-unfused',
					'fuel.pump-wire-may-burn',
				]),
			);
	});
});

test('whatever can hurt a person about fuel under pressure is settled before it cranks', () => {
	const late = rules.filter(({ id, harm }) => harm === 'person' && /^(fuel|injectors)\./.test(id));
	expect(late.length).toBeGreaterThan(8);
	for (const { id, stage } of late) expect(stages.indexOf(stage), id).toBeLessThanOrEqual(stages.indexOf('crank'));
});

describe('cranking with the plugs out', () => {
	test('comes before the rail is primed, and after its pressure was let down and the injectors were unplugged', () => {
		const said = saidIn(procedures.find(({ title }) => title.startsWith('First crank'))!);
		const at = (pattern: RegExp) => said.flatMap((text, index) => (pattern.test(text) ? [index] : []));
		const cranks = at(
			/\bCrank (five seconds|again)|compression of each cylinder|whether the controller sees the crank/,
		);
		expect(cranks.length).toBe(4);
		const primes = at(/pump primes the rail/);
		expect(primes.length).toBe(1);
		expect(Math.max(...cranks)).toBeLessThan(primes[0]!);
		const made = at(/Let the pressure down.*Unplug the injectors/);
		expect(made.length).toBe(2);
		expect(Math.max(...made)).toBeLessThan(Math.min(...cranks));
	});

	test('every other text that asks for it says so as well', () => {
		const asked = thatSay(
			/\bcrank with the plugs out|starter 10 seconds|five\s+turns each, write|throttle held open, battery on a charger/i,
		);
		expect(asked.length).toBeGreaterThan(3);
		for (const [id, text] of asked) {
			const whole = texts
				.filter(([other]) => other === id)
				.map(([, one]) => one)
				.join(' ');
			expect(whole, id).toMatch(/pressure (let )?down/i);
			expect(text === whole ? text : whole, id).toMatch(/injectors\s+unplugged/i);
		}
	});
});

describe('no text', () => {
	test('takes the hose off a wastegate or leaves it without its signal', () => {
		expect(thatSay(/boost controller('s hose)? off|hose off[^.]*wastegate|controller off, so that/i)).toEqual([]);
		const spring = procedures
			.flatMap(saidIn)
			.filter(text => /spring alone/.test(text) && /Join the compressor outlet/.test(text));
		expect(spring.length).toBe(2);
		for (const text of spring) expect(text).toMatch(/spring-side port.*clamp both ends.*tug/);
	});

	test('opens a cap that is not cold', () => {
		for (const [id, text] of thatSay(/\bcap (is )?(still )?off\b|\bopen (neck|cap)\b/i))
			expect(text, id).toMatch(/\bcold\b/i);
		for (const [id, text] of thatSay(/radiator neck|in the neck\b/i)) expect(text, id).toMatch(/\bcold\b/i);
	});

	test('puts a fixed pressure on a cooling system', () => {
		expect(thatSay(/(press|holds)[^.]*\b15 psi/i)).toEqual([]);
	});

	test('lets a return line run into the open with the pump running', () => {
		const led = thatSay(/(disconnect|lead)[^.]*\breturn\b/i).filter(([, text]) => /\bpump\b/.test(text));
		expect(led.length).toBeGreaterThan(1);
		for (const [id, text] of led) expect(text, id).toMatch(/closed fuel can/);
	});

	test('sends anybody out for a pull in the dark', () => {
		expect(thatSay(/\bin the dark\b/i)).toEqual([]);
	});

	test('gives spark advance past the target, or goes on after knock without a look at the plugs', () => {
		const given = thatSay(/Give back the spark advance/);
		expect(given.length).toBe(1);
		expect(given[0]![1]).toMatch(/never past the target/);
		expect(given[0]![1]).toMatch(/first knock\. Take 3 to 4 deg out, and read the plugs/i);
	});

	test('runs in new rings without load', () => {
		for (const [id, text] of thatSay(/twenty minutes/).filter(([, text]) => /1500/.test(text)))
			expect(text, id).toMatch(/flat-tappet/);
	});

	test('names a lever position without the transmission it belongs to', () => {
		for (const [id, text] of thatSay(/lever in (neutral|park)\b/i).filter(([id]) => /^First/.test(id)))
			expect(text, id).toMatch(/manual|automatic/i);
	});
});

test('where a full-load figure passes its limit the first boost says: do not pull', () => {
	const { steps } = procedures.find(({ stage }) => stage === 'boost')!;
	const refusals = steps.filter(step => us(step.do).startsWith('Do not pull'));
	expect(refusals.length).toBeGreaterThan(5);
	for (const { only_when, do: words } of refusals) expect(only_when, us(words)).not.toBeNull();
	expect(steps.filter(({ only_when }) => only_when).length).toBe(refusals.length);
});
