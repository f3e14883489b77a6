import type { UnitSet } from '../../sheet/question.ts';
import type { App } from '../app.ts';
import type { Effect } from '../effect.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { lineEditor, textOf } from '../line-editor.ts';
import { clip, line, lines } from '../text.ts';

const extra = ['A new build', 'The demo build, to look around', 'Read a log'] as const;
/** The unit sets, as somebody knows them from a drawer of tools. */
const unitRows: readonly (readonly [UnitSet, string])[] = [
	['us', 'US: inches, psi, lb-ft, degF'],
	['metric', 'metric: mm, bar, Nm, degC'],
];
const count = ({ taking, found }: App): number => {
	if (taking === 'name') return 0;
	if (taking === 'units') return unitRows.length;
	return taking === 'log' ? found.length : found.length + extra.length;
};

export const bindings: readonly Binding[] = [
	{ keys: ['enter'], shown: 'Enter', label: 'open', run: open },
	{
		keys: ['ctrl-b', 'escape'],
		shown: '^B',
		label: 'back',
		when: app => app.taking !== 'answer',
		run: app =>
			app.taking === 'units' ? { ...app, taking: 'name' } : { ...app, taking: 'answer', field: lineEditor() },
	},
	...listKeys(count),
];

function open(app: App): App {
	const asking = (effect: Effect): App => ({ ...app, effects: [...app.effects, effect] });
	if (app.taking === 'name') {
		const name = textOf(app.field).trim();
		const cursor = unitRows.findIndex(([set]) => set === app.units);
		return name === '' ? app : { ...app, taking: 'units', cursor };
	}
	if (app.taking === 'units')
		return asking({ do: 'create', name: textOf(app.field).trim(), units: unitRows[app.cursor]![0] });
	const sheet = app.found[app.cursor];
	if (sheet && app.taking === 'log') return asking({ do: 'open', path: sheet.path, log: true });
	if (sheet) return asking({ do: 'open', path: sheet.path });
	if (app.cursor === app.found.length) return { ...app, taking: 'name', field: lineEditor(), notice: null };
	if (app.cursor === app.found.length + 1) return asking({ do: 'open', path: 'demo' });
	if (app.found.length === 0) return { ...app, notice: 'A log is judged in its car: start the build first.' };
	return { ...app, taking: 'log', cursor: 0, notice: null };
}

const welcome = [
	'It asks about your swap, works out what the answers mean, and says what to do, in which order.',
	'A first round takes 12 to 20 minutes. Stop whenever you like: every answer is saved at once.',
	'To have at hand: the papers of the engine and of the parts; for later a compression gauge and a meter.',
] as const;

/** The sheets there are, a new one, the demo build; a new one is asked its name and its units. */
export function view(app: App, width: number): Frame {
	const sheets = app.found.map(({ name, words }) => clip(`${name}  ${words}`, width - 2));
	const { taking } = app;
	const items =
		taking === 'units' ? unitRows.map(([, words]) => words) : taking === 'log' ? sheets : [...sheets, ...extra];
	const question = { units: 'Which units are on your gauges and tools?', log: 'Which build is the log of?' };
	const asked = taking === 'units' || taking === 'log' ? lines(question[taking], width) : [];
	return {
		top: [
			line('swap-audit', 'title'),
			...(taking === 'answer' ? welcome.flatMap(text => lines(text, width, 'quiet')) : []),
			line(''),
			...asked,
		],
		rows: taking === 'name' ? null : { items, cursor: app.cursor },
		bottom: [
			...(app.notice ? lines(app.notice, width, 'bad') : []),
			...(taking === 'name' ? [line(clip(`Name of the build: ${textOf(app.field)}_`, width), 'field')] : []),
		],
		panel: [],
		footer: [],
	};
}
