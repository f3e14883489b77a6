import type { Assessment } from '../audit/assess.ts';
import type { Model } from '../audit/model.ts';
import type { Figures } from '../interview/figures.ts';
import type { Show } from '../interview/listing.ts';
import type { State } from '../interview/state.ts';
import type { Edit } from '../plugs/edit/edit.ts';
import type { Access } from '../sheet/access.ts';
import type { UnitSet } from '../sheet/question.ts';
import type { Effect } from './effect.ts';
import { type LineEditor, lineEditor } from './line-editor.ts';
import type { LogSession } from './log-session.ts';
import type { Appearance } from './theme.ts';

/** A sheet that can be opened, as the opening screen shows it. */
export interface Found {
	readonly path: string;
	readonly name: string;
	readonly words: string;
}

export type Screen =
	| 'opening'
	| 'build'
	| 'question'
	| 'sections'
	| 'review'
	| 'touched'
	| 'changed'
	| 'end'
	| 'fitting'
	| 'audit'
	| 'finding'
	| 'limits'
	| 'tonight'
	| 'logFile'
	| 'logColumns'
	| 'logChannel'
	| 'logReading'
	| 'logFound'
	| 'logAnswers'
	| 'plugs'
	| 'pins'
	| 'about-half'
	| 'about-pin';

/** The screens with an audit behind them that something ends on. */
export type Audited = 'audit' | 'changed' | 'end';

/** Everything the drawn face shows. Only `reduce` makes the next. */
export interface App {
	readonly model: Model;
	readonly today: string;
	readonly tool: string;
	readonly screen: Screen;
	/** Sheets to choose from on the opening screen. */
	readonly found: readonly Found[];
	readonly interview: State | null;
	readonly field: LineEditor;
	/** What is taken: an answer, a note, the name of a new build and then its units, whose log is read, a cell of pins. */
	readonly taking: 'answer' | 'note' | 'name' | 'units' | 'log' | 'cell';
	/** How the typed number is known; null: as the words say, else an estimate. */
	readonly known: 'measured' | 'paperwork' | 'estimate' | null;
	readonly cursor: number;
	/** How many lines of a page of text are passed. */
	readonly scroll: number;
	/** The window, and how far a page key goes in it. */
	readonly window: { readonly columns: number; readonly rows: number };
	readonly page: number;
	/** Which questions the list of them shows, and what was typed to find one in it. */
	readonly show: Show;
	readonly filter: string;
	readonly ticked: readonly string[];
	/** Sections and answers ticked as touched before a recheck, and the section whose answers are in sight. */
	readonly touched: readonly string[];
	readonly unfolded: string | null;
	readonly open: 'how' | 'keys' | null;
	/** The plugs while they are edited, and what the last TAB offered for a half-typed circuit. */
	readonly pins: { readonly edit: Edit; readonly offered: readonly string[] } | null;
	/** While the model is fitted before an audit: the screen after it, and the share that is done. */
	readonly fitting: { readonly to: Audited; readonly share: number } | null;
	/** The audit on the screen. */
	readonly assessment: Assessment | null;
	/** The live figures, and those before the last answer, to show what it moved. */
	readonly figures: Figures | null;
	readonly before: Figures | null;
	/** The log that is read. */
	readonly log: LogSession | null;
	/** How long an evening is, min, and the one place for it; null: the most urgent. */
	readonly evening: { readonly minutes: number; readonly place: Access | null };
	readonly notice: string | null;
	/** What stays in sight on every screen: that answers are not saved, or that the work goes on in another file. */
	readonly alert: { readonly kind: 'unsaved' | 'fork'; readonly text: string } | null;
	readonly appearance: Appearance;
	/** The units that are offered first to a new build. */
	readonly units: UnitSet;
	readonly effects: readonly Effect[];
}

/** The app as it opens: no sheet yet, the opening screen. */
export function newApp(model: Model, today: string, tool: string, found: readonly Found[]): App {
	return {
		model,
		today,
		tool,
		screen: 'opening',
		found,
		interview: null,
		field: lineEditor(),
		taking: 'answer',
		known: null,
		cursor: 0,
		scroll: 0,
		window: { columns: 80, rows: 24 },
		page: 8,
		show: 'all',
		filter: '',
		ticked: [],
		touched: [],
		unfolded: null,
		open: null,
		pins: null,
		fitting: null,
		assessment: null,
		figures: null,
		before: null,
		log: null,
		evening: { minutes: 120, place: null },
		notice: null,
		alert: null,
		units: 'us',
		appearance: { background: 'dark', depth: 4, unicode: false },
		effects: [],
	};
}
