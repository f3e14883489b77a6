import { describe, expect, test } from 'vitest';
import { recordOf } from '../../src/audit/record.ts';
import { answerTo, emptySheet, withAnswer } from '../../src/sheet/sheet.ts';
import { type App, newApp } from '../../src/tui/app.ts';
import { arrive } from '../../src/tui/asking.ts';
import { figured } from '../../src/tui/judging.ts';
import type { Key } from '../../src/tui/keys.ts';
import { toBuild, withSheet } from '../../src/tui/open-sheet.ts';
import { reduce } from '../../src/tui/reduce.ts';
import { audited } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { colored } from './colored.ts';
import { drawn } from './drawn.tsx';
import { logScreens } from './log-screens.ts';
import { recheckedBy } from './rechecked.ts';

const sizes = [
	[80, 24],
	[40, 12],
	[120, 40],
] as const;

const model = testModel();
const found = [
	{ path: 'mule.json', name: 'mule', words: 'in-bay, 61 answered, 2026-04-02: 4 to do' },
	{ path: 'hauler.json', name: 'hauler', words: '12 answered, no audit yet' },
];
const fresh = newApp(model, '2026-05-01', '0.0.0', found);
const press = (app: App, ...keys: (Key | string)[]): App =>
	keys.reduce<App>((now, key) => reduce(now, typeof key === 'string' ? ({ key } as Key) : key), app);
const type = (text: string): Key[] => [...text].map(character => ({ key: 'text', text: character }));

const wrong = withAnswer(buildSheet('boosted'), 'fuel.hose', { value: 'carburettor-rated' });
const before = { ...wrong, name: 'mule', audits: [recordOf(audited(wrong))] };
/** The named build at a question that it has no answer to yet, figures in sight. */
function at(id: string): App {
	const opened = withSheet(fresh, withAnswer({ ...wrong, name: 'mule' }, id, undefined), 'full', null);
	return figured(arrive({ ...opened, screen: 'question', interview: { ...opened.interview!, at: id, said: null } }));
}
/** A sheet with a handful of answers, so that a new question elsewhere changes no golden. */
const few = ['engine.year', 'engine.bore', 'engine.history', 'fuel.pressure', 'boost.kind'].reduce(
	(sheet, id) => withAnswer(sheet, id, answerTo(wrong, id)),
	withAnswer(emptySheet('mule'), 'engine.compression', { known: 'not-known', note: 'gauge lent' }),
);
const build = toBuild(withSheet(fresh, before, 'full', null));
const audit = press(at('engine.bore'), 'ctrl-t');
const touched = { ...build, screen: 'touched' as const, touched: ['fuel'], unfolded: 'fuel', cursor: 8 };

const screens: Readonly<Record<string, App>> = {
	opening: fresh,
	'opening-name': press(fresh, 'down', 'down', 'enter', ...type('shed')),
	'opening-units': press(fresh, 'down', 'down', 'enter', ...type('shed'), 'enter'),
	build,
	'first-question': withSheet(fresh, emptySheet('mule'), 'quick', null),
	number: press(at('engine.bore'), ...type('3.78 in meas')),
	'number-two-ways': press(at('engine.peak_rpm'), ...type('5,500'), 'enter'),
	whole: press(at('engine.year'), ...type('1999')),
	choice: press(at('fuel.hose'), 'down'),
	several: press(at('engine.history'), { key: 'text', text: ' ' }),
	'per-cylinder': press(at('engine.compression'), ...type('152 150 149')),
	'firing-order': press(at('engine.firing_order'), ...type('1-8-4')),
	pairs: press(at('ignition.towers'), ...type('1 6, 3 5')),
	curve: press(at('sensors.meter_curve'), { key: 'paste', text: '0.6\t15\n1.5\t90\n5\t1100\n' }),
	loads: press(at('charging.loads'), ...type('fans 28, pump 9')),
	codes: press(at('harness.codes'), ...type('P0340')),
	circuits: press(at('harness.circuits'), ...type('check lamp;;;done')),
	teeth: press(at('sensors.crank_teeth_engine'), ...type('36-1')),
	'how-to-find-out': press(at('engine.compression'), 'ctrl-f'),
	note: press(at('engine.bore'), 'ctrl-o', ...type('looked twice')),
	sections: press(at('engine.bore'), 'ctrl-g'),
	review: press(withSheet(fresh, few, 'quick', null), 'ctrl-r'),
	'review-found': press(withSheet(fresh, few, 'quick', null), 'ctrl-r', 'tab', 'tab', 'tab', ...type('pump wire')),
	audit,
	finding: press(audit, 'enter'),
	'audit-ticked': press(audit, { key: 'text', text: ' ' }, 'down'),
	end: { ...audit, screen: 'end' as const, notice: 'The audit is in mule.audit.md' },
	tonight: press(audit, { key: 'text', text: 'p' }, { key: 'text', text: 'm' }),
	limits: press(audit, { key: 'text', text: 'l' }),
	touched,
	changed: (() => {
		const app = recheckedBy(press({ ...touched, touched: ['fuel.hose'] }, 'enter'), { 'fuel.hose': 'inj' });
		return { ...app, notice: 'The audit is in mule.audit.md' };
	})(),
	help: press(at('engine.bore'), { key: 'text', text: '?' }),
	...(await logScreens(audit)),
};

/** How many questions there are in all, and how long they take, is no business of a picture of one of them. */
const pinned = (frames: string) =>
	frames
		.replace(/[#.]+ (\d+ of \d+)/g, '$1')
		.replace(/[\u2588\u2591]+ (\d+ of \d+)/g, '$1')
		.replace(/^(. )[ \d]{2}\d (?=\w)/gm, '$1000 ')
		.replace(/about \d+/g, 'about 00')
		.replace(/\d+ (of \d+|answered)/g, words => words.replace(/\d/g, '0'));

/** Two themes: plain marks on a dark background, drawn ones on a light one. */
const themes = {
	dark: { background: 'dark', depth: 24, unicode: false },
	light: { background: 'light', depth: 24, unicode: true },
} as const;

describe.each(Object.entries(screens))('%s', (name, app) => {
	const plain = sizes.map(([columns, rows]) => drawn(app, columns, rows));

	test('is drawn as its golden says, in three sizes, in a dark theme and in a light one', async () => {
		const frames = Object.entries(themes).flatMap(([theme, appearance]) =>
			sizes.map(([columns, rows], at) => {
				const themed = { ...app, appearance };
				const frame = appearance.unicode ? drawn(themed, columns, rows) : plain[at];
				return `== ${columns} x ${rows}, ${theme} ==\n${frame}\n-- colors --\n${colored(themed, columns, rows)}\n`;
			}),
		);
		await expect(pinned(frames.join('\n'))).toMatchFileSnapshot(`./goldens/${name}.txt`);
	});

	test('never exceeds its window, and needs no letter that an old terminal lacks', () => {
		const frames = [...plain, drawn(app, 60, 16), drawn(app, 200, 60)];
		for (const [at, [columns, rows]] of [...sizes, [60, 16] as const, [200, 60] as const].entries()) {
			const lines = frames[at]!.split('\n');
			expect(lines.length).toBe(rows);
			for (const line of lines) {
				expect(line.length).toBeLessThan(columns);
				expect(line).toMatch(/^[ -~]*$/);
			}
		}
	});
});
