import type { App, Screen } from './app.ts';
import type { Frame } from './frame.ts';
import type { Binding } from './keymap.ts';
import type { Key } from './keys.ts';
import { aboutHalf, aboutPin } from './screens/about.ts';
import * as audit from './screens/audit.ts';
import * as build from './screens/build.ts';
import * as changed from './screens/changed.ts';
import * as end from './screens/end.ts';
import * as finding from './screens/finding.ts';
import * as fitting from './screens/fitting.ts';
import * as limits from './screens/limits.ts';
import * as logAnswers from './screens/log-answers.ts';
import * as logChannel from './screens/log-channel.ts';
import * as logColumns from './screens/log-columns.ts';
import * as logFile from './screens/log-file.ts';
import * as logFound from './screens/log-found.ts';
import * as logReading from './screens/log-reading.ts';
import * as opening from './screens/opening.ts';
import * as pins from './screens/pins.ts';
import * as plugs from './screens/plugs.ts';
import * as question from './screens/question.ts';
import * as review from './screens/review.ts';
import * as sections from './screens/sections.ts';
import * as tonight from './screens/tonight.ts';
import * as touched from './screens/touched.ts';

/** What a screen is to the face: its keys, and how it is drawn. */
interface Drawn {
	readonly bindings: readonly Binding[];
	/** `whole` is the width of the window, `width` that of the column beside the pane, if the screen has one. */
	view(app: App, width: number, whole: number): Frame;
	/** Whether it has a second pane in a wide window, and whether characters go into its field. */
	readonly paned?: boolean;
	readonly typed?: boolean;
	/** A screen that takes keys of its own, what is typed among them; null leaves a key to the field. */
	press?(app: App, key: Key): App | null;
	/** What is half typed on it put where it belongs, before it is left. */
	settle?(app: App): App;
}

/** One entry a screen. */
export const screens: Readonly<Record<Screen, Drawn>> = {
	opening,
	build,
	question,
	sections,
	review,
	touched,
	changed,
	end,
	fitting,
	audit,
	finding,
	limits,
	tonight,
	logFile,
	logColumns,
	logChannel,
	logReading,
	logFound,
	logAnswers,
	plugs,
	pins,
	'about-half': aboutHalf,
	'about-pin': aboutPin,
};
