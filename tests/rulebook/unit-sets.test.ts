import { expect, test } from 'vitest';
import { renderAudit } from '../../src/report/render.ts';
import type { UnitSet } from '../../src/sheet/question.ts';
import { type Text, textIn } from '../../src/sheet/text.ts';
import { audited, brokenBuild } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { rules, questions, cautions, procedures, limits, worksheet } = testModel().rulebook;

/** Every text of the rulebook that may have figures, with the place it stands at. */
const texts: readonly (readonly [string, Text])[] = [
	...rules.flatMap(({ id, why, do: steps, prove, parts }) =>
		[why, prove, ...steps, ...parts].map(text => [id, text] as const),
	),
	...questions.flatMap(({ id, ask, how, howEach }) =>
		[ask, how, ...Object.values(howEach ?? {})].map(text => [id, text] as const),
	),
	...cautions.map(({ id, words }) => [id, words] as const),
	...procedures.flatMap(({ title, steps }) =>
		steps.flatMap(({ do: does, read, stop }) => [does, read, stop].map(text => [title, text] as const)),
	),
	...worksheet.map(({ circuit, words }) => [circuit, words] as const),
	...Object.entries(limits).map(([id, { raise }]) => [id, raise] as const),
];

/** Units of one set alone. Wire gauge, the kPa of sensors, the cc of chambers and the class of insulation are in both. */
const foreign: Readonly<Record<UnitSet, RegExp>> = {
	metric:
		/\d ?(?:psi|degF|mph|lb-ft|lbf|hp|lb|lb\/h|lb\/min|oz-in|ft|gal\/h|miles?|cu in|in(?! (?:a|the|each|every|\d|five|idle|gear|run|top|neutral|both)))\b/,
	us: /\d (?:mm|cm|m|km|km\/h|bar|N m|kW|kg|kg\/h|L|L\/h|g-cm)\b(?!2)|\d (?!1[02]5)degC/,
};
const bolts = /\b(?:7\/16|7\/16 and 1\/2|1\/2) in\b|\b(?:10, 11 and )?12 mm\b|\b1[02]5 degC\b|-40 degC/g;

test.each(['us', 'metric'] as const)('no text of the %s set has a unit of the other', units => {
	for (const [id, text] of texts) expect(textIn(text, units).replace(bolts, ''), id).not.toMatch(foreign[units]);
});

test('nor is a converted figure falsely precise: 102 mm, 0.069 bar and 193 degC are what a calculator says', () => {
	const precise = /(?<![.\d])\d{2,}[1-46-9] mm\b|\b0\.\d{3,} bar\b|\b\d+\.\d+ degC\b|\b\d{3,}\.\d+ /;
	for (const [id, text] of texts) {
		const said = textIn(text, 'metric');
		if (said !== textIn(text, 'us')) expect(said, id).not.toMatch(precise);
	}
});

test('a threshold is said in the other units as a person says it: 160 km and 0.07 bar, not 161 km and 0.0689 bar', () => {
	const shown = rules.flatMap(({ id, thresholds }) =>
		Object.values(thresholds).flatMap(({ shown }) => Object.values(shown ?? {}).map(text => [id, text] as const)),
	);
	expect(shown.length).toBeGreaterThan(30);
	for (const [id, text] of shown) {
		const digits = text
			.split(' ')[0]!
			.replace(/^0\.0*|[.]/g, '')
			.replace(/0+$/, '');
		expect(digits, id).toMatch(/^\d{1,2}$|^\d{2}5$/);
	}
	const due = rules.find(({ id }) => id === 'build.hundred-mile-check-due')!.thresholds.due!;
	expect(due.shown).toEqual({ metric: '160 km' });
	expect(due.value).toEqual(['value', 160934.4]);
});

test.each(['us', 'metric'] as const)('findings of an audit in %s units keep to them', units => {
	const { findings } = audited(buildSheet('boosted'), { units }).audit;
	for (const { why, do: steps, prove, rule } of findings)
		expect([why, ...steps, prove].join(' ').replace(bolts, ''), rule).not.toMatch(foreign[units]);
});

test.each(['us', 'metric'] as const)(
	'a printed audit in %s units has none of the other, and no pressure finer than a gauge',
	units => {
		const text = renderAudit(audited(brokenBuild(), { units }), 'md', 'mule').text.replace(/\s+/g, ' ');
		expect(text.replace(bolts, '').match(new RegExp(`.{40}(?:${foreign[units].source})`))?.[0]).toBeUndefined();
		expect(text).not.toMatch(/\b0\.\d{3,} bar/);
	},
);
