import { PassThrough } from 'node:stream';
import { render } from 'ink';
import type { Model } from '../audit/model.ts';
import type { Pass } from '../interview/state.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Found } from './app.ts';
import { type App, figured, newApp, toBuild, type Wish, withSheet } from './app.ts';
import { KeyReader } from './keys.ts';
import { leaving, reduce } from './reduce.ts';
import { Screen } from './screen.tsx';
import { Store } from './store.ts';

/** What the drawn face needs of the machine. Each may throw an Error whose message is for the person. */
export interface Machine {
	readonly found: readonly Found[];
	open(path: string): Sheet;
	create(name: string): Sheet;
	save(sheet: Sheet): void;
	/** Writes the audit beside the sheet and keeps its record in it. */
	writeAudit(sheet: Sheet, since: number | null): { readonly path: string; readonly sheet: Sheet };
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

/** Runs the drawn face until the person leaves or a signal comes. Gives the exit status and the last sheet. */
export function runDrawn(
	{ model, today, tool, sheet, pass, section }: Opening,
	machine: Machine,
): Promise<{ status: number; sheet: Sheet | null }> {
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

		const end = (status: number) => {
			if (ended) return;
			ended = true;
			clearTimeout(figures);
			clearTimeout(lone);
			screen.unmount();
			stdin.setRawMode(false);
			stdin.pause();
			stdout.write(pasting.off + alternate.off);
			resolve({ status, sheet: store.read().app.interview?.sheet ?? null });
		};
		const fail = (error: unknown) => {
			end(70);
			reject(error);
		};

		/** Does what the reducer wished, in order. */
		const grant = (app: App, wish: Wish): App => {
			try {
				switch (wish.wish) {
					case 'save':
						machine.save(wish.sheet);
						return app;
					case 'write-audit': {
						const written = machine.writeAudit(wish.sheet, wish.since);
						const interview = app.interview && { ...app.interview, sheet: written.sheet };
						return { ...app, interview, told: `The audit is in ${written.path}` };
					}
					case 'open':
						return toBuild(withSheet(app, machine.open(wish.path), pass, section));
					case 'create':
						return withSheet(app, machine.create(wish.name), 'quick', section);
					case 'quit':
						end(0);
						return app;
				}
			} catch (error) {
				return { ...app, told: (error as Error).message };
			}
		};
		const settle = (app: App): App => {
			let now: App = { ...app, wishes: [] };
			for (const wish of app.wishes) now = grant(now, wish);
			return now.wishes.length > 0 ? settle(now) : now;
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
			for (const wish of leaving(store.read().app)) grant(store.read().app, wish);
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
