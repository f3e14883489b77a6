import { PassThrough } from 'node:stream';
import { render } from 'ink';
import type { Model } from '../audit/model.ts';
import type { Pass } from '../interview/state.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Found } from './app.ts';
import { type App, type Effect, figured, newApp, toBuild, withSheet } from './app.ts';
import { KeyReader } from './keys.ts';
import { leaving, reduce } from './reduce.ts';
import { Screen } from './screen.tsx';
import { Store } from './store.ts';

/** What the drawn face needs of the machine. */
export interface Machine {
	/** Whether an error that one of the others threw is for the person, to be shown; any other is a bug and ends it all. */
	isForPerson(error: unknown): error is Error;
	readonly found: readonly Found[];
	open(path: string): Sheet;
	create(name: string): Sheet;
	save(sheet: Sheet): void;
	/** Writes the audit beside the sheet and keeps its record in it. */
	writeAudit(sheet: Sheet, since: number | null): { readonly told: string; readonly sheet: Sheet };
}

export interface Opening {
	readonly model: Model;
	readonly today: string;
	readonly tool: string;
	/** A sheet to start with; null: the opening screen. */
	readonly sheet: Sheet | null;
	readonly pass: Pass;
	readonly section: string | null;
}

/** After this pause in the typing the live figures catch up, ms. */
const pause = 150;
/** An escape that nothing follows for so long is a key of its own, ms. */
const escapeWait = 40;

const alternate = { on: '\u001b[?1049h', off: '\u001b[?1049l' };
const pasting = { on: '\u001b[?2004h', off: '\u001b[?2004l' };

export interface Ended {
	readonly status: number;
	readonly sheet: Sheet | null;
	/** Why the last sheet could not be saved; null when it is saved. */
	readonly unsaved: Error | null;
}

/** Runs the drawn face until the person leaves or a signal comes. Throws what is a bug, the terminal being as it was. */
export function runDrawn({ model, today, tool, sheet, pass, section }: Opening, machine: Machine): Promise<Ended> {
	const { stdin, stdout } = process;
	const first = newApp(model, today, tool, machine.found);
	const store = new Store(
		sheet ? withSheet(first, sheet, pass, section) : first,
		stdout.columns ?? 80,
		stdout.rows ?? 24,
	);
	return new Promise((resolve, reject) => {
		const keys = new KeyReader();
		let figures: NodeJS.Timeout | undefined;
		let lone: NodeJS.Timeout | undefined;
		let ended = false;
		/** The last save that failed: tried again on leaving. Who then leaves once more, leaves without it. */
		let unsaved: { readonly sheet: Sheet; readonly error: Error; readonly said: boolean } | null = null;

		const close = () => {
			if (ended) return;
			ended = true;
			clearTimeout(figures);
			clearTimeout(lone);
			try {
				screen.unmount();
			} catch {
				// Drawing may be what broke: the terminal is given back all the same.
			}
			stdin.setRawMode(false);
			stdin.pause();
			stdout.write(pasting.off + alternate.off);
		};
		const end = (status: number) => {
			close();
			resolve({ status, sheet: store.read().app.interview?.sheet ?? null, unsaved: unsaved?.error ?? null });
		};
		const fail = (error: unknown) => {
			close();
			reject(error);
		};
		const save = (sheet: Sheet, leaving: boolean) => {
			try {
				machine.save(sheet);
				unsaved = null;
			} catch (error) {
				if (machine.isForPerson(error)) unsaved = { sheet, error, said: leaving || unsaved?.said === true };
				throw error;
			}
		};

		/** Does what the reducer asked for, in order. */
		const perform = (app: App, effect: Effect): App => {
			try {
				switch (effect.do) {
					case 'save':
						save(effect.sheet, false);
						return app;
					case 'write-audit': {
						const written = machine.writeAudit(effect.sheet, effect.since);
						unsaved = null;
						const interview = app.interview && { ...app.interview, sheet: written.sheet };
						return { ...app, interview, told: written.told };
					}
					case 'open':
						return toBuild(withSheet(app, machine.open(effect.path), pass, section));
					case 'create':
						return withSheet(app, machine.create(effect.name), 'quick', section);
					case 'quit':
						if (unsaved && !unsaved.said) save(unsaved.sheet, true);
						end(0);
						return app;
				}
			} catch (error) {
				if (!machine.isForPerson(error)) throw error;
				const anyway = effect.do === 'quit' ? ' Leave once more to leave without your last answers.' : '';
				return { ...app, told: error.message + anyway };
			}
		};
		const settle = (app: App): App => {
			let now: App = { ...app, effects: [] };
			for (const effect of app.effects) now = perform(now, effect);
			return now.effects.length > 0 ? settle(now) : now;
		};
		const press = (pressed: ReturnType<KeyReader['read']>) => {
			try {
				let { app } = store.read();
				for (const key of pressed) {
					app = settle(reduce(app, key));
					if (ended) return;
				}
				store.set({ app });
				clearTimeout(figures);
				figures = setTimeout(() => store.set({ app: figured(store.read().app) }), pause);
				clearTimeout(lone);
				if (keys.waiting) lone = setTimeout(() => press(keys.flush()), escapeWait);
			} catch (error) {
				fail(error);
			}
		};
		const stop = (status: number) => () => {
			for (const effect of leaving(store.read().app)) perform(store.read().app, effect);
			end(status);
		};

		/** Pasted text comes marked from here on; tests wait for this before they type. */
		const announce = () => {
			stdout.write(pasting.on);
		};
		store.set({ app: settle(store.read().app) });
		stdout.write(alternate.on);
		const screen = render(<Screen store={store} ready={announce} />, {
			stdin: new PassThrough() as never,
			exitOnCtrlC: false,
			patchConsole: false,
			maxFps: 60,
		});
		// What breaks while drawing, or in a timer, leaves the terminal as it was too.
		screen.waitUntilExit().catch(fail);
		process.prependListener('uncaughtException', fail);
		stdin.setEncoding('utf8');
		stdin.setRawMode(true);
		stdin.on('data', (chunk: string) => press(keys.read(chunk)));
		stdin.on('end', stop(130));
		stdout.on('resize', () => {
			stdout.write('\u001b[2J\u001b[H');
			store.set({ columns: stdout.columns, rows: stdout.rows });
		});
		process.on('SIGHUP', stop(129));
		process.on('SIGINT', stop(130));
		process.on('SIGTERM', stop(143));
		figures = setTimeout(() => store.set({ app: figured(store.read().app) }), pause);
	});
}
