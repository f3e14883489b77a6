import { render } from 'ink-testing-library';
import { describe, expect, test } from 'vitest';
import { recordOf } from '../../src/audit/record.ts';
import { emptySheet, withAnswer } from '../../src/sheet/sheet.ts';
import { type App, newApp } from '../../src/tui/app.ts';
import { arrive, dispatch } from '../../src/tui/asking.ts';
import { compose, cutTo } from '../../src/tui/frame.ts';
import type { Key } from '../../src/tui/keys.ts';
import { textOf } from '../../src/tui/line-editor.ts';
import { toBuild, withSheet } from '../../src/tui/open-sheet.ts';
import { reduce } from '../../src/tui/reduce.ts';
import { Screen } from '../../src/tui/screen.tsx';
import { Store } from '../../src/tui/store.ts';
import { frameOf } from '../../src/tui/view.ts';
import { audited } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { recheckedBy } from './rechecked.ts';

const model = testModel();
const fresh = () => newApp(model, '2026-05-01', '0.0.0', []);
const onSheet = (sheet = emptySheet('mule')) => withSheet(fresh(), sheet, 'quick', null);
/** The healthy build, open at its audit: everything is answered. */
const answered = onSheet(buildSheet('boosted'));
const withWrongHose = withAnswer(buildSheet('boosted'), 'fuel.hose', { value: 'carburettor-rated' });
const onWrongHose = onSheet(withWrongHose);
const press = (app: App, ...keys: (Key | string)[]): App =>
	keys.reduce<App>((now, key) => reduce(now, typeof key === 'string' ? ({ key } as Key) : key), app);
const type = (text: string): Key[] => [...text].map(character => ({ key: 'text', text: character }));
const seen = (app: App, width = 79): string => {
	const { top, rows, bottom, panel, footer } = frameOf(app, width);
	return [...top, ...bottom, ...panel, ...footer]
		.map(({ text }) => text)
		.concat(rows?.items ?? [])
		.join('\n');
};

test('the drawn screen shows question, choices and keys, and follows the store', async () => {
	const store = new Store(onSheet(), 80, 24);
	const { lastFrame, unmount } = render(<Screen store={store} ready={() => {}} />);
	expect(lastFrame()).toContain('How far along is the build today?');
	expect(lastFrame()).toContain('> ');
	store.set({ app: press(store.read().app, 'enter') });
	await expect.poll(lastFrame).toContain('What is it mostly for?');
	unmount();
});

describe('on a question', () => {
	test('a number is read as it is typed, in both unit sets', () => {
		const app = press(onSheet(), 'enter', 'enter', 'down', 'enter', ...type('1.5 bar'));
		expect(seen(app)).toContain('read as 1.5 bar, 21.8 psi');
	});

	test('what cannot be read is said, and the question stays', () => {
		const app = press(onSheet(), 'enter', 'enter', 'down', 'enter', ...type('much'), 'enter');
		expect(seen(app)).toContain('What boost should it make');
		expect(app.effects.filter(({ do: what }) => what === 'save').length).toBe(3);
	});

	test('back goes to the question before, and its answer is marked', () => {
		const app = press(onSheet(), 'down', 'enter', 'ctrl-b');
		expect(seen(app)).toContain('How far along');
		expect(seen(app)).toContain('2 (*) engine in the bay');
	});

	test('not known is an answer, later is none', () => {
		const notKnown = press(onSheet(), 'ctrl-n');
		expect(notKnown.interview?.sheet.answers.build?.stage).toEqual({ known: 'not-known' });
		const later = press(onSheet(), 'ctrl-l');
		expect(later.interview?.sheet.answers.build?.stage).toBeUndefined();
		expect(seen(later)).toContain('What is it mostly for?');
	});

	test('a bare stray key changes no answer', () => {
		const before = onSheet();
		for (const stray of [...type('qxz!7'), 'tab', 'escape', 'delete', 'home', 'ctrl-z'] as (Key | string)[]) {
			expect(press(before, stray).interview?.sheet).toBe(before.interview?.sheet);
		}
	});
});

describe('the keys', () => {
	const screens: readonly (readonly [string, App])[] = [
		['opening', fresh()],
		['question', onSheet()],
		['sections', press(onSheet(), 'ctrl-g')],
		['review', press(answered, 'ctrl-r')],
		['audit', press(answered, 'ctrl-t')],
	];

	test.each(screens)('%s: the footer is one line of four keys at most, and the one that lists all', (_, app) => {
		for (const width of [23, 39, 79, 300]) {
			const { footer } = frameOf(app, width);
			expect(footer.length).toBe(1);
			const keys = footer[0]!.text.split('  ');
			expect(keys.at(-1)).toBe('? all keys');
			expect(keys.length).toBeLessThanOrEqual(5);
			if (width > 60) expect(keys.length).toBeGreaterThan(2);
		}
		expect(seen(press(app, { key: 'text', text: '?' }))).toMatch(/\^Q +save and leave/);
	});

	test('a question mark belongs to a half-typed text; F1 shows the keys there too', () => {
		const number = press(onSheet(), 'enter', 'enter', 'down', 'enter', ...type('1?'));
		expect(textOf(number.field)).toBe('1?');
		expect(frameOf(number, 79).footer[0]!.text).toContain('F1 all keys');
		expect(seen(press(number, 'f1'))).toContain('Keys on this screen');
	});

	test('the list of keys is paged where the window is small, and ^C leaves from it', () => {
		const small = { ...onSheet(), window: { columns: 28, rows: 8 } };
		const help = press(small, { key: 'text', text: '?' });
		expect(press(help, 'page-down').open).toBe('keys');
		expect(press(help, 'page-down').scroll).toBeGreaterThan(2);
		expect(press(help, 'ctrl-c').effects.map(({ do: what }) => what)).toContain('quit');
	});

	test.each(screens)('%s: ? explains them, and any key closes that', (_, app) => {
		const help = press(app, { key: 'text', text: '?' });
		expect(seen(help)).toContain('Keys on this screen');
		expect(press(help, 'enter').open).toBeNull();
	});

	test.each(screens)('%s: fits its window, the question and the footer in sight, from 40 x 12 up', (_, app) => {
		for (const [columns, rows] of [
			[40, 12],
			[60, 16],
			[80, 24],
			[120, 40],
		] as const) {
			const frame = frameOf(app, columns - 1);
			const cut = cutTo(frame, rows);
			const count =
				cut.top.length + cut.shown + cut.help.length + cut.bottom.length + cut.panel.length + cut.footer.length;
			expect(count + (cut.gap ? 2 : 0)).toBeLessThanOrEqual(rows);
			expect(cut.footer).toEqual(frame.footer);
			for (const { text } of [...cut.top, ...cut.bottom, ...cut.footer]) expect(text.length).toBeLessThan(columns);
			if (frame.rows) expect(frame.rows.cursor >= cut.from && frame.rows.cursor < cut.from + cut.shown).toBe(true);
		}
	});
});

test('at the end of a pass the audit is asked for and shown', () => {
	const app = answered;
	expect(app.screen).toBe('audit');
	expect(app.effects.map(({ do: what }) => what)).toContain('write-audit');
	expect(seen(app)).toContain('Before it cranks: ready, as far as the answers go');
});

test('a comma that reads two ways is a choice of two; typing on takes the choice away', () => {
	const at = withSheet(fresh(), emptySheet('mule'), 'full', 'engine');
	const bore = { ...at, interview: { ...at.interview!, at: 'engine.bore' } };
	const asked = press(bore, ...type('3,780 in'), 'enter');
	expect(frameOf(asked, 79).rows?.items).toEqual(['3780 in, which does not fit', '3.78 in, 96.01 mm']);
	const picked = press(asked, 'down', 'enter');
	expect(picked.interview?.sheet.answers.engine?.bore).toEqual({ value: 3.78, unit: 'in' });
	expect(frameOf(press(asked, 'backspace'), 79).rows).toBeNull();
});

describe('a recheck', () => {
	const sheet = { ...withWrongHose, audits: [recordOf(audited(withWrongHose))] };
	const opened = withSheet(fresh(), sheet, 'full', null);
	const sectionAt = model.rulebook.sections.findIndex(({ id }) => id === 'fuel');
	const down = (count: number) => Array.from({ length: count }, () => 'down');

	test('an audited build that is come back to asks what is wanted', () => {
		expect(toBuild(opened).screen).toBe('build');
		expect(seen(toBuild(opened))).toContain('1 to do');
		expect(seen(toBuild(opened))).toContain('Recheck: something on the car was changed');
	});

	test('asks what was touched, then only that and what hangs on it, then shows what changed', () => {
		const asking = press(
			toBuild(opened),
			...down(frameOf(toBuild(opened), 79).rows!.items.findIndex(row => row.startsWith('Recheck'))),
			'enter',
		);
		expect(seen(asking)).toContain('What did you touch since 2026-05-01?');
		const unfolded = press(asking, ...down(sectionAt), 'right');
		const hose = frameOf(unfolded, 79).rows!.items.findIndex(row => row.includes('hose:'));
		const begun = press(unfolded, ...down(hose - sectionAt), { key: 'text', text: ' ' }, 'enter');
		expect(begun.screen).toBe('question');
		const asked: string[] = [];
		const app = recheckedBy(begun, { 'fuel.hose': 'injection' }, asked);
		expect(asked).toContain('fuel.hose');
		expect(asked).toContain('fuel.leak_test');
		expect(asked).toContain('build.checked_before_move');
		expect(asked).not.toContain('engine.bore');
		expect(app.screen).toBe('changed');
		expect(seen(app)).toContain('What changed since 2026-05-01');
		expect(seen(app)).toMatch(/Settled: .*hose/i);
		// What was ticked on the last walk round is not ticked again by pressing Enter.
		expect(app.interview?.sheet.answers.build?.checked_before_move).toEqual({ value: [] });
		expect(press(app, 'enter').screen).toBe('audit');
		expect(app.effects.at(-1)).toMatchObject({ do: 'write-audit', since: 1 });
	});
});

describe('a list of ticks', () => {
	const at = () => press(withSheet(fresh(), emptySheet('mule'), 'full', 'harness'), 'enter');
	const grounds = () => {
		let app = at();
		while (app.interview!.at !== 'harness.grounds') app = press(app, 'ctrl-n');
		return app;
	};
	const last = (app: App) => frameOf(app, 79).rows!.items.length - 1;

	test('Enter with nothing ticked asks, and the last row says that none applies', () => {
		const asked = press(grounds(), 'enter');
		expect(asked.interview?.sheet.answers.harness?.grounds).toBeUndefined();
		expect(seen(asked)).toContain('Nothing is ticked.');
		const none = press(asked, ...Array.from({ length: last(asked) }, () => 'down'), 'enter');
		expect(none.interview?.sheet.answers.harness?.grounds).toEqual({ value: [] });
	});

	test('every answer is echoed, choices too', () => {
		expect(seen(press(onSheet(), 'enter'))).toContain('Read as engine out, on a stand or the floor.');
		expect(seen(press(grounds(), { key: 'text', text: ' ' }, 'enter'))).toContain('Read as battery to engine block.');
	});
});

describe('help', () => {
	test('lies beside the choices, which stay in sight, and Enter closes it and answers nothing', () => {
		const open = press(onSheet(), 'ctrl-f');
		expect(frameOf(open, 79).rows!.items.length).toBeGreaterThan(3);
		expect(frameOf(open, 79).help!.length).toBeGreaterThan(0);
		const closed = press(open, 'enter');
		expect(closed.open).toBeNull();
		expect(closed.interview?.sheet.answers.build).toBeUndefined();
	});
});

test('choosing from the list after a refused word answers with the row', () => {
	const app = press(onSheet(), ...type('moon'), 'enter', 'down', 'enter');
	expect(app.interview?.sheet.answers.build?.stage).toEqual({ value: 'in-bay' });
});

test('what was wrong is gone as soon as something else is typed', () => {
	const wrong = press(onSheet(), 'enter', 'enter', 'down', 'enter', ...type('much'), 'enter');
	expect(wrong.interview?.said?.kind).toBe('problem');
	expect(press(wrong, 'backspace').interview?.said).toBeNull();
});

test('text half typed at a question is found again on coming back to it', () => {
	const number = press(onSheet(), 'enter', 'enter', 'down', 'enter', ...type('1.'));
	const away = press(number, 'ctrl-b');
	expect(textOf(away.field)).toBe('');
	const { at } = number.interview!;
	const back = arrive(dispatch(away, { do: 'go', id: at! }));
	expect(textOf(back.field)).toBe('1.');
	expect(textOf(arrive(back).field)).toBe('1.');
	const answered = dispatch(back, { do: 'enter', text: '12 psi' });
	expect(answered.interview?.aside).toBeNull();
});

test('that something is not saved is reported on every screen, until it is', () => {
	const alert = { kind: 'unsaved', text: 'the disk is full' } as const;
	const app: App = { ...onWrongHose, alert };
	for (const screen of ['audit', 'limits', 'finding', 'review', 'sections', 'touched'] as const)
		expect(seen({ ...app, screen })).toContain('NOT SAVED: the disk is full');
	const fork: App = { ...app, alert: { kind: 'fork', text: 'another program wrote the sheet' } };
	expect(press(app, 'ctrl-k').alert).toBe(alert);
	expect(press(fork, 'ctrl-k').alert).toBeNull();
});

describe('the list of questions', () => {
	const items = (app: App) => frameOf(app, 79).rows?.items ?? [];
	const whole = withSheet(fresh(), buildSheet('boosted'), 'full', null);
	const atBore = () =>
		arrive({ ...whole, screen: 'question' as const, interview: { ...whole.interview!, at: 'engine.bore' } });

	test('is found in by the beginnings of words, by an id, by a number', () => {
		const list = press(atBore(), 'ctrl-r');
		expect(list.screen).toBe('review');
		for (const row of items(press(list, ...type('pump wire')))) expect(row).toMatch(/wire/);
		expect(items(press(list, ...type('ignition.gap'))).length).toBe(1);
		const number = model.rulebook.questions.findIndex(({ id }) => id === 'fuel.hose') + 1;
		expect(press(list, ...type(String(number)), 'enter').interview?.at).toBe('fuel.hose');
		expect(frameOf(press(list, ...type('zzz')), 79).rows).toBeNull();
	});

	test('from the sections too: what is typed there finds any question', () => {
		const went = press(atBore(), 'ctrl-g', ...type('pump fuse'), 'enter');
		expect(went.interview?.at).toBe('fuel.pump_fuse');
		expect(press(went, 'ctrl-b').interview?.at).toBe('engine.bore');
		expect(press(atBore(), 'ctrl-g', ...type('pump'), 'escape', 'escape').screen).toBe('question');
	});

	test('opens at the question one comes from, and keeps place and filter over a change', () => {
		const list = press(atBore(), 'ctrl-r');
		expect(items(list)[list.cursor]).toContain('bore: 3.93 in');
		const changed = press(press(list, ...type('fuel'), 'down', 'down', 'enter'), 'ctrl-n');
		expect(changed.screen).toBe('review');
		expect(textOf(changed.field)).toBe('fuel');
		expect(changed.cursor).toBe(changed.show === 'answered' ? 0 : 2);
		const other = press(press(list, 'tab', 'tab', 'down', 'enter'), 'ctrl-b');
		expect(other.screen).toBe('question');
	});

	test('shows all, the answered, the open and the not known ones', () => {
		const some = withAnswer(buildSheet('boosted'), 'fuel.hose', { known: 'not-known' });
		const list = press(withSheet(fresh(), some, 'full', null), 'ctrl-r');
		const counts = [0, 1, 2, 3].map(tabs => items(press(list, ...Array.from({ length: tabs }, () => 'tab'))).length);
		const [answered, open, notKnown, all] = counts as [number, number, number, number];
		expect(notKnown).toBe(1);
		expect(answered + open + notKnown).toBe(all);
	});

	test('Home, End and the page keys go as far as they say', () => {
		const list = press(atBore(), 'ctrl-r');
		const last = items(list).length - 1;
		expect(press(list, 'end').cursor).toBe(last);
		expect(press(list, 'end', 'home').cursor).toBe(0);
		const seenRows = cutTo(frameOf(press(list, 'home'), 79), 24).shown;
		expect(press(list, 'home', 'page-down').cursor).toBe(seenRows - 1);
	});
});

test('going to the sections, a half-typed text waits at its question', () => {
	const number = press(onSheet(), 'enter', 'enter', 'down', 'enter', ...type('1.'));
	expect(textOf(press(number, 'ctrl-g', 'escape').field)).toBe('1.');
});

describe('readings typed cylinder by cylinder', () => {
	const compression = () => {
		const at = withSheet(fresh(), emptySheet('mule'), 'full', null);
		return arrive({ ...at, interview: { ...at.interview!, at: 'engine.compression' } });
	};

	test('Enter takes one and empties the field; what stands is in sight; Backspace takes it back', () => {
		const two = press(compression(), ...type('150'), 'enter', ...type('-'), 'enter');
		expect(textOf(two.field)).toBe('');
		expect(seen(two)).toContain('1: 150');
		expect(seen(two)).toContain('Cylinder 3 of 8?');
		expect(seen(two)).toContain('- where not measured');
		expect(two.effects.filter(({ do: what }) => what === 'save').length).toBe(2);
		const back = press(two, 'backspace', 'backspace');
		expect(textOf(back.field)).toBe('');
		expect(back.interview?.begun).toEqual(['150']);
	});

	test('going to the sections and back, they are one line in the field', () => {
		const away = press(compression(), ...type('150'), 'enter', ...type('15'), 'ctrl-g', 'escape');
		expect(textOf(away.field)).toBe('150 15');
		expect(away.interview?.begun).toEqual([]);
	});
});

describe('the audit screen', () => {
	const audit = press(onWrongHose, 'ctrl-t');
	const space: Key = { key: 'text', text: ' ' };

	test('lists a stage at a time under how ready it is; the cursor goes by findings', () => {
		const { rows } = frameOf(audit, 79);
		expect(rows!.items[0]).toMatch(/^! Before it cranks: /);
		expect(rows!.items.filter(row => /^[!+] /.test(row)).length).toBeGreaterThan(3);
		expect(rows!.items[rows!.cursor]).toContain('Carburetor hose');
	});

	test('a line is ticked as done, kept in the sheet, and unticked; no verdict changes by it', () => {
		const ticked = press(audit, space);
		expect(ticked.interview?.sheet.ticks).toEqual([expect.stringContaining('fuel.')]);
		expect(ticked.effects.at(-1)).toMatchObject({ do: 'save', sheet: { ticks: ticked.interview?.sheet.ticks } });
		expect(seen(ticked)).toContain('1 ticked');
		expect(seen(press(ticked, 'enter'))).toContain('ticked as done');
		expect(press(ticked, 'enter', space).interview?.sheet.ticks).toBeUndefined();
		expect(press(ticked, 'enter', space).interview?.sheet.answers).toBe(ticked.interview?.sheet.answers);
	});
});

test('a pass ends on what is known, the first jobs and where the audit is; Enter shows it whole', () => {
	const last = withSheet(fresh(), withAnswer(withWrongHose, 'cooling.fan', undefined), 'quick', null);
	const end = press(last, 'enter');
	expect(end.screen).toBe('end');
	expect(seen(end)).toContain('Audit of boosted: the pass is done');
	expect(seen(end)).toMatch(/The first jobs\n- Carburetor hose on the pressure side/);
	expect(end.effects.map(({ do: what }) => what)).toContain('write-audit');
	expect(press(end, 'enter').screen).toBe('audit');
});

test('in the smallest window the field stays in sight, and what is not saved', () => {
	const at = withSheet(fresh(), emptySheet('mule'), 'full', null);
	const app = press(
		arrive({ ...at, interview: { ...at.interview!, at: 'engine.compression' } }),
		...type('150'),
		'enter',
		...type('15'),
	);
	const small = compose(frameOf({ ...app, alert: { kind: 'unsaved', text: 'disk full' } }, 23), 24, 8, app.appearance);
	const text = small.map(line => line.text).join('\n');
	expect(small.length).toBe(8);
	expect(text).toContain('NOT SAVED');
	expect(text).toContain('Answer (psi): 15_');
	expect(text).toContain('F1 all keys');
	expect(compose(frameOf(app, 17), 18, 6, app.appearance).map(line => line.text)).toContain('room: 24 x 8');
});
