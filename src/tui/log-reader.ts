import type { ColumnChoices } from '../log/column-mapping.ts';
import type { LogProgress } from '../log/progress.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { App } from './app.ts';
import type { Host } from './host.ts';
import type { LogSession } from './log-session.ts';
import { judged, lookedAt, withLog } from './log-steps.ts';

/** Reading was stopped: nothing is reported of it. */
class Stopped extends Error {}

/** Reads logs beside the drawing; what comes of it reaches the app later. */
export class LogReader {
	private readonly host: Host;
	private readonly later: (change: (app: App) => App) => void;
	/** Counts what was begun: only the last one is reported. */
	private turn = 0;
	/** Whether the fit of the last one goes on. */
	private fits = true;

	constructor(host: Host, later: (change: (app: App) => App) => void) {
		this.host = host;
		this.later = later;
	}

	look(sheet: Sheet, path: string, choices: ColumnChoices): void {
		const turn = ++this.turn;
		this.host.lookAtLog(sheet, path, choices).then(
			found => this.update(turn, app => lookedAt(app, choices, found)),
			error => this.refused(turn, error, app => ({ ...app, cursor: app.log?.channel ? 0 : app.cursor })),
		);
	}

	judge(sheet: Sheet, path: string, choices: ColumnChoices): void {
		const turn = ++this.turn;
		let shown = '';
		const show = (doing: LogSession['doing'], share: number | null) => {
			if (turn !== this.turn) throw new Stopped();
			const what = `${doing} ${Math.floor(100 * (share ?? 0))}`;
			if (what !== shown) this.update(turn, app => withLog(app, { doing, share }));
			shown = what;
		};
		this.fits = true;
		const progress: LogProgress = {
			read: share => show('reading', share),
			fitted: share => {
				show('fitting', share);
				return this.fits;
			},
		};
		this.host.judgeLog(sheet, path, choices, progress).then(
			report => this.update(turn, app => judged(app, report)),
			error => this.refused(turn, error, app => ({ ...app, screen: 'logColumns', cursor: 0 })),
		);
	}

	stop(): void {
		this.turn++;
	}

	/** Goes on without the fit of the last one. */
	skipFit(): void {
		this.fits = false;
	}

	private update(turn: number, change: (app: App) => App): void {
		if (turn === this.turn) this.later(change);
	}

	/** What the host refused is reported; a bug ends it all. */
	private refused(turn: number, error: unknown, change: (app: App) => App): void {
		if (error instanceof Stopped) return;
		this.update(turn, app => {
			if (!this.host.isForPerson(error)) throw error;
			return { ...change(app), notice: error.message };
		});
	}
}
