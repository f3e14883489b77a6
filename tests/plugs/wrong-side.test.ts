import { describe, expect, test } from 'vitest';
import { plugsOf } from '../../src/plugs/parts.ts';
import type { Pin, PlugHalf } from '../../src/sheet/plugs.ts';
import { audited } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { vocabulary } = testModel().rulebook;
const circuits = vocabulary.circuits.filter(({ id, shared }) => id !== 'airbag' && !shared).slice(0, 24);

/** A half whose pins carry one circuit after the other, at the names that `name` gives them. */
const half = (of: PlugHalf['half'], name: (at: number) => string, count = 24): PlugHalf => ({
	plug: 'dash',
	half: of,
	pins: circuits.slice(0, count).map((circuit, at): Pin => ({ pin: name(at), circuit: circuit.id })),
});
const numbered = (at: number) => String(at + 1);
const lettered = (at: number) => `${'AB'[Math.floor(at / 12)]}${(at % 12) + 1}`;
const mirrored = (a: PlugHalf, b: PlugHalf) =>
	plugsOf([a, b], vocabulary, () => undefined, 'us')!.reading.pairs[0]!.mirrored;

describe('one half read from the wrong side', () => {
	test.each([
		[
			'rows of letters turned round',
			lettered,
			(at: number) => `${'AB'[Math.floor(at / 12)]}${12 - (at % 12)}`,
			'turned round',
		],
		[
			'rows of 12 numbered through, turned round',
			numbered,
			(at: number) => String(Math.floor(at / 12) * 12 + 12 - (at % 12)),
			'row of 12 cavities turned round',
		],
		[
			'rows of 8 numbered through, turned round',
			numbered,
			(at: number) => String(Math.floor(at / 8) * 8 + 8 - (at % 8)),
			'row of 8 cavities turned round',
		],
		[
			'two rows of 12 in the other order',
			numbered,
			(at: number) => String(((at + 12) % 24) + 1),
			'rows of 12 cavities in the other order',
		],
		['numbers shifted by one', numbered, (at: number) => String(at + 2), 'shifted by one'],
	] as const)('%s is found, with how many agree then', (_, left, right, how) => {
		const found = mirrored(half('engine', left), half('car', right));
		expect(found?.how).toMatch(how);
		expect(found!.agree).toBeGreaterThanOrEqual(22);
		expect(found!.now).toBeLessThanOrEqual(2);
	});

	test('is not found where the halves agree, where they differ in any way, or where only nine more pins would agree', () => {
		expect(mirrored(half('engine', numbered), half('car', numbered))).toBeNull();
		expect(
			mirrored(
				half('engine', numbered),
				half('car', at => String(((at * 7) % 24) + 1)),
			),
		).toBeNull();
		expect(
			mirrored(
				half('engine', numbered, 9),
				half('car', at => String(9 - at), 9),
			),
		).toBeNull();
		expect(
			mirrored(
				half('engine', numbered, 11),
				half('car', at => String(11 - at), 11),
			),
		).not.toBeNull();
	});

	test('that is said first, fails for a person, and nothing else about the pair fails', () => {
		const plugs = [half('engine', numbered), half('car', at => String(24 - at))];
		const found = audited({ ...buildSheet('boosted'), plugs }).audit.findings.filter(
			({ rule, verdict }) => rule.startsWith('pins.') && verdict === 'fails',
		);
		expect(found.map(({ rule, harm, stage }) => [rule, harm, stage])).toEqual([
			['pins.read-mirrored', expect.any(String), 'crank'],
		]);
	});
});
