import { parseFragment } from 'parse5';
import { describe, expect, test } from 'vitest';
import { strips } from '../../../src/report/pictures/curves.ts';
import { color } from '../../../src/report/pictures/draw.ts';
import { renderAudit } from '../../../src/report/render.ts';
import { emptySheet } from '../../../src/sheet/sheet.ts';
import { audited, brokenBuild, changed } from '../../support/audited.ts';
import { buildSheet } from '../../support/model.ts';
import { elements } from '../../support/tree.ts';

const pictures = (sheet = brokenBuild(), units: 'us' | 'metric' = 'us') =>
	Object.fromEntries(
		Object.entries(renderAudit(audited(sheet, { draws: 20, units }), 'md', 'mule').attachments).filter(([name]) =>
			name.endsWith('.svg'),
		),
	);

/** Coordinates of everything drawn, by axis. */
function drawn(svg: string): { x: number[]; y: number[] } {
	const x: number[] = [];
	const y: number[] = [];
	for (const { attrs } of elements(parseFragment(svg))) {
		const number = (name: string) => attrs.filter(attr => attr.name === name).map(({ value }) => Number(value));
		x.push(...number('x'), ...number('x1'), ...number('x2'));
		y.push(...number('y'), ...number('y1'), ...number('y2'));
		const path = attrs.find(({ name }) => name === 'd')?.value ?? '';
		for (const [, px, py] of path.matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/g)) {
			x.push(Number(px));
			y.push(Number(py));
		}
	}
	return { x, y };
}

describe('the pictures', () => {
	const whole = pictures();
	const [limits, boost, meter, compression] = ['limits', 'over-boost', 'air-meter', 'compression'].map(
		name => `mule-${name}.svg`,
	) as [string, string, string, string];

	test.each([
		['a full boosted build', brokenBuild(), [limits, boost, meter, compression]],
		['nothing answered', emptySheet('nothing'), []],
		['no compression', changed(brokenBuild(), { 'engine.compression': undefined }), [limits, boost, meter]],
		['no boost', buildSheet('unboosted'), [limits, meter, compression]],
	])('%s: only those with data are there', (_, sheet, names) => {
		expect(Object.keys(pictures(sheet)).sort()).toEqual([...names].sort());
	});

	test.each(['us', 'metric'] as const)('%s: nothing is drawn outside the sheet, and no number is none', units => {
		for (const [name, svg] of Object.entries(pictures(brokenBuild(), units))) {
			const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(svg)!;
			const { x, y } = drawn(svg);
			expect(x.length, name).toBeGreaterThan(10);
			for (const at of x) expect(at, name).toSatisfy((n: number) => n >= 0 && n <= Number(width));
			for (const at of y) expect(at, name).toSatisfy((n: number) => n >= 0 && n <= Number(height));
			expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
		}
	});

	test('each has a title and words for those who cannot see it, and only the colors of all', () => {
		for (const svg of Object.values(whole)) {
			expect(svg).toMatch(/<title id="[a-z-]+">[^<]+<\/title>\n<desc id="[a-z-]+">[^<]{20,}<\/desc>/);
			const shades = [...svg.matchAll(/(?:fill|stroke)="(#[0-9a-f]+)"/g)].map(([, shade]) => shade!);
			for (const shade of shades) expect(Object.values(color)).toContain(shade);
		}
	});

	test('the ladder shows what the audit shows, lowest first', () => {
		const placed = audited(brokenBuild()).audit.limits.filter(({ value }) => value !== null);
		expect(placed.length).toBeGreaterThan(4);
		const words = /<desc[^>]*>(.*?)<\/desc>/.exec(whole[limits]!)![1]!;
		const places = placed.map(({ title }) => words.indexOf(title.replaceAll("'", '&#39;')));
		expect(places).not.toContain(-1);
		expect(places).toEqual([...places].sort((a, b) => a - b));
		expect(words).toMatch(/Dashed: target [\d.]+ psi\.$/);
	});

	test('the ladder has an axis and says what its signs mean; the target runs through no words', () => {
		const svg = whole[limits]!;
		expect(svg.match(/font-size="11"[^>]*>[\d.]+ psi</g)!.length).toBeGreaterThan(3);
		expect(svg).toMatch(
			/>Dashed: target [\d.]+ psi\. Heavy edge, orange: gives out before it\. Pale: what is to spare/,
		);
		expect(svg).toContain('Thin line with ends: nine of ten cases lie within.');
		const number = (name: string, mark: string) => Number(new RegExp(` ${name}="([-\\d.]+)"`).exec(mark)![1]);
		const dashes = svg.match(/<line [^>]*stroke-dasharray[^>]*>/g)!;
		const words = svg.match(/<text [^>]*font-family|<text [^>]*>/g)!.map(mark => number('y', mark));
		expect(dashes.length).toBeGreaterThan(4);
		for (const dash of dashes)
			for (const base of words) expect(base < number('y1', dash) || base - 10 > number('y2', dash), dash).toBe(true);
	});

	test('one limit far beyond the target does not squeeze the ladder', () => {
		const assessment = audited(brokenBuild(), { draws: 20 });
		const [first, ...others] = assessment.audit.limits.filter(({ value, bound }) => value !== null && bound === null);
		const far = { ...others.at(-1)!, value: first!.value! * 100, low: null, high: null };
		const widths = (limits: typeof others) => {
			const svg = renderAudit({ ...assessment, audit: { ...assessment.audit, limits } }, 'md', 'mule').attachments[
				'mule-limits.svg'
			]!;
			return { svg, first: Number(/<rect x="[\d.]+" y="\d+" width="([\d.]+)" height="14"/.exec(svg)![1]) };
		};
		const squeezed = widths([first!, ...others.slice(0, -1), far]);
		expect(squeezed.first).toBeGreaterThan(60);
		expect(squeezed.svg).toContain('Two strokes: the bar goes on.');
	});

	test('a cylinder under 75 % of the highest is named and drawn apart; one without a reading says so', () => {
		const readings = [150, 113, 112, null, 149, 152, 150, 148];
		const svg = pictures(
			changed(brokenBuild(), { 'engine.compression': { value: readings, unit: 'psi', known: 'measured' } }),
		)[compression]!;
		expect(svg).toContain('cylinder 2 113 psi (low), cylinder 3 112 psi (low), cylinder 4 not measured');
		expect(svg.match(/stroke="#111" stroke-width="3"/g)?.length).toBe(2);
		expect(svg).toContain('>Dashed: 75 % of the highest, 114 psi. Heavy edge, orange: under it.<');
	});

	test('the line of the compression picture is where the rule has it', () => {
		const assessment = audited(brokenBuild());
		const { rulebook } = assessment.model;
		const rules = rulebook.rules.map(rule =>
			rule.id === 'engine.compression-uneven'
				? {
						...rule,
						thresholds: { balance: { value: ['value', 0.6] as ['value', number], kind: 'ratio' as const, unit: '%' } },
					}
				: rule,
		);
		const model = { ...assessment.model, rulebook: { ...rulebook, rules } };
		expect(renderAudit({ ...assessment, model }, 'md', 'mule').attachments[compression]).toContain(
			'>Dashed: 60 % of the',
		);
	});

	test('what is past a limit is heavier on its curve, from where it crosses, and the limit says so', () => {
		const points: [number, number][] = [
			[0, 1],
			[1, 3],
			[2, 1],
			[3, 3],
		];
		const series = { title: 'duty', points, show: String, level: { at: 2, title: 'most', wrong: 'above' as const } };
		const { svg } = strips('Curve', 'a curve that goes over twice', { title: 'x', show: String, mark: null }, [series]);
		const heavy = [...svg.matchAll(/<path d="M([\d.]+),[\d.]+(?:L[\d.,L]+)?" fill="none" stroke="#d55e00"/g)];
		// x from 64 to 600 over 3: it crosses at 0.5 and at 2.5.
		expect(heavy.map(([, x]) => Number(x))).toEqual([153.3, 510.7]);
		expect(svg).toContain('>Heavy, orange: past the dotted limit.<');
	});

	test('an odd count of cylinders is drawn in one row', () => {
		const gone = ['engine.firing_order', 'engine.leakdown', 'engine.compression_wet', 'ignition.towers'];
		const sheet = changed(brokenBuild(), {
			...Object.fromEntries(gone.map(id => [id, undefined])),
			'engine.cylinders': { value: 5 },
			'engine.compression': { value: [150, 151, 149, 152, 150], unit: 'psi', known: 'measured' },
		});
		expect(pictures(sheet)[compression]).toContain('cylinder 5 150 psi');
	});
});
