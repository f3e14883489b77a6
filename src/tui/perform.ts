import type { Sheet } from '../sheet/sheet.ts';
import type { App } from './app.ts';
import type { Effect } from './effect.ts';
import { Fitter } from './fitter.ts';
import type { Host, Opening } from './host.ts';
import { LogReader } from './log-reader.ts';
import { offered, readLog } from './log-steps.ts';
import { toBuild, withSheet } from './open-sheet.ts';

/**
 * Does what the reducer asked of its host, and keeps in the app what came of it. A save is done at once, after each key that
 * changed the sheet: a signal finds nothing unsaved but half-typed text, which `leaving` puts into the sheet's draft.
 */
export class Performer {
	/** The last save that failed: tried once more on leaving. Who then leaves once more, leaves without it. */
	private failed: { readonly sheet: Sheet; readonly error: Error; readonly said: boolean } | null = null;
	private readonly opening: Opening;
	private readonly host: Host;
	private readonly quit: (app: App) => void;
	private readonly suspend: () => void;
	private readonly logs: LogReader;
	private readonly fitter: Fitter;

	constructor(
		opening: Opening,
		host: Host,
		quit: (app: App) => void,
		suspend: () => void,
		later: (change: (app: App) => App) => void,
	) {
		this.opening = opening;
		this.host = host;
		this.quit = quit;
		this.suspend = suspend;
		this.logs = new LogReader(host, later);
		this.fitter = new Fitter(later);
	}

	/** Why the last sheet could not be saved; null when it is saved. */
	get unsaved(): Error | null {
		return this.failed?.error ?? null;
	}

	/** The app after all that it asked for is done, in order, and what that asked for in turn. */
	settle(app: App): App {
		let now: App = { ...app, effects: [] };
		for (const effect of app.effects) now = this.perform(now, effect);
		return now.effects.length > 0 ? this.settle(now) : now;
	}

	/** The app after one effect. What the host refused is in it, to be reported; a bug is thrown. */
	perform(app: App, effect: Effect): App {
		try {
			return this.done(app, effect);
		} catch (error) {
			if (!this.host.isForPerson(error)) throw error;
			// A name that cannot be had is typed anew.
			if (effect.do === 'create') return { ...app, taking: 'name', notice: error.message };
			if (this.host.isFork(error)) return { ...app, alert: { kind: 'fork', text: error.message } };
			if (effect.do !== 'save' && effect.do !== 'quit') return { ...app, notice: error.message };
			const anyway = effect.do === 'quit' ? ' Leave once more to leave without your last answers.' : '';
			return { ...app, alert: { kind: 'unsaved', text: error.message + anyway } };
		}
	}

	private done(app: App, effect: Effect): App {
		const { host, opening } = this;
		switch (effect.do) {
			case 'save':
				return this.save(app, effect.sheet, false);
			case 'write-audit': {
				const written = host.writeAudit(effect.sheet, effect.since);
				return { ...this.withAudits(saved(app), written.sheet), notice: written.message };
			}
			case 'open': {
				const opened = withSheet(app, host.open(effect.path), opening.pass, opening.section);
				return effect.log ? readLog(toBuild(opened)) : toBuild(opened);
			}
			case 'offer-paths':
				return offered(app, host.pathsBeginning(effect.begun));
			case 'look-at-log':
				this.logs.look(app.interview!.sheet, effect.path, effect.choices);
				return app;
			case 'judge-log':
				this.logs.judge(effect.sheet, effect.path, effect.choices);
				return app;
			case 'stop-log':
				this.logs.stop();
				return app;
			case 'skip-fit':
				this.logs.skipFit();
				return app;
			case 'fit':
				this.fitter.fit(app.model, effect.sheet);
				return app;
			case 'create':
				return withSheet(app, host.create(effect.name, effect.units), 'quick', opening.section);
			case 'suspend':
				this.suspend();
				return app;
			case 'quit': {
				const { failed } = this;
				const now = failed && !failed.said ? this.save(app, failed.sheet, true) : app;
				this.quit(now);
				return now;
			}
		}
	}

	private save(app: App, sheet: Sheet, leaving: boolean): App {
		try {
			const onDisk = this.host.save(sheet);
			this.failed = null;
			return this.withAudits(saved(app), onDisk);
		} catch (error) {
			if (this.host.isForPerson(error))
				this.failed = this.host.isFork(error) ? null : { sheet, error, said: leaving || this.failed?.said === true };
			throw error;
		}
	}

	private withAudits(app: App, { audits }: Sheet): App {
		this.failed = null;
		const { interview } = app;
		return interview && interview.sheet.audits !== audits
			? { ...app, interview: { ...interview, sheet: { ...interview.sheet, audits } } }
			: app;
	}
}

/** All is saved again: an alert that it is not goes; that there are two files is reported until it is acknowledged. */
const saved = (app: App): App => (app.alert?.kind === 'unsaved' ? { ...app, alert: null } : app);
