import { PassThrough } from 'node:stream';
import { render } from 'ink';
import { type App, newApp } from './app.ts';
import { leaving } from './global-keys.ts';
import type { Ended, Host, Opening } from './host.ts';
import { figured } from './judging.ts';
import { type Key, KeyReader } from './keys.ts';
import { withSheet } from './open-sheet.ts';
import { Painter } from './painter.ts';
import { Performer } from './perform.ts';
import { reduce } from './reduce.ts';
import { Screen } from './screen.tsx';
import { Store } from './store.ts';
import { Terminal } from './terminal.ts';
import type { Appearance } from './theme.ts';

/** After this pause in the typing the live figures catch up, ms. */
const pause = 150;
/** A stop that the system passes over, as it does where no shell could continue the program, is taken back after, ms. */
const notStopped = 50;

/** Runs the drawn face until the person leaves or a signal comes. Throws what is a bug, the terminal being as it was. */
export function runDrawn(opening: Opening, host: Host): Promise<Ended> {
	return new Promise((resolve, reject) => new Run(opening, host, resolve, reject).begin());
}

/** What the terminal can show, as far as the environment says; it may answer later about its background. */
function appearanceOf(env: NodeJS.ProcessEnv, stdout: NodeJS.WriteStream): Appearance {
	const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || '';
	const background = /;(7|15)$/.test(env.COLORFGBG ?? '') ? 'light' : 'dark';
	return { background, depth: stdout.getColorDepth?.() ?? 1, unicode: /utf-?8/i.test(locale) && env.TERM !== 'linux' };
}

class Run {
	private readonly host: Host;
	private readonly resolve: (ended: Ended) => void;
	private readonly reject: (error: unknown) => void;
	private readonly painter = new Painter(process.stdout);
	private readonly terminal = new Terminal(this.painter);
	private readonly keys = new KeyReader();
	private readonly performer: Performer;
	private readonly store: Store;
	private figures: NodeJS.Timeout | undefined;
	private held: NodeJS.Timeout | undefined;
	private ended = false;
	private unmount = () => {};

	constructor(opening: Opening, host: Host, resolve: (ended: Ended) => void, reject: (error: unknown) => void) {
		const { model, today, tool, sheet, pass, section } = opening;
		this.host = host;
		this.resolve = resolve;
		this.reject = reject;
		this.performer = new Performer(
			opening,
			host,
			app => this.end(0, app),
			() => this.suspend(),
			change => this.later(change),
		);
		const first = {
			...newApp(model, today, tool, host.found),
			units: host.units,
			appearance: appearanceOf(process.env, process.stdout),
		};
		const app = sheet ? withSheet(first, sheet, pass, section) : first;
		this.store = new Store(app, this.painter.columns, this.painter.rows);
	}

	begin(): void {
		const { stdin } = process;
		this.store.set({ app: this.performer.settle(this.store.read().app) });
		this.terminal.take();
		const drawn = <Screen store={this.store} canvas={this.painter} ready={() => this.terminal.announce()} />;
		const screen = render(drawn, {
			stdin: new PassThrough() as never,
			stdout: this.painter as never,
			// All that is drawn, at once: where it is written is the painter's business.
			debug: true,
			exitOnCtrlC: false,
			patchConsole: false,
		});
		this.unmount = screen.unmount;
		// What breaks while drawing, or in a timer, leaves the terminal as it was too.
		screen.waitUntilExit().catch(this.fail);
		process.prependListener('uncaughtException', this.fail);
		stdin.setEncoding('utf8');
		stdin.on('data', (chunk: string) => this.press(this.keys.read(chunk)));
		stdin.on('end', () => this.stop(130));
		// Also for a window that is as it was when the news comes: it was cleared in between.
		process.on('SIGWINCH', () => {
			this.store.set({ columns: this.painter.columns, rows: this.painter.rows });
			this.painter.repaint();
		});
		this.host.onEndingSignal(status => this.stop(status));
		process.on('SIGTSTP', this.suspend);
		process.on('SIGCONT', this.retake);
		this.catchUp();
	}

	private press(pressed: readonly Key[]): void {
		try {
			let { app } = this.store.read();
			for (const key of pressed) {
				app = this.performer.settle(reduce(app, key));
				if (this.ended) return;
			}
			this.store.set({ app });
			this.catchUp();
			this.waitForMore();
		} catch (error) {
			this.fail(error);
		}
	}

	/** What was begun beside the typing, as reading a log, comes in. */
	private later(change: (app: App) => App): void {
		if (this.ended) return;
		try {
			this.store.set({ app: this.performer.settle(change(this.store.read().app)) });
		} catch (error) {
			this.fail(error);
		}
	}

	/** After a pause in the typing the live figures follow. */
	private catchUp(): void {
		clearTimeout(this.figures);
		this.figures = setTimeout(() => this.store.set({ app: figured(this.store.read().app) }), pause);
	}

	/** What came in part is waited for, but not for ever. */
	private waitForMore(): void {
		clearTimeout(this.held);
		const { wait } = this.keys;
		if (wait !== null) this.held = setTimeout(() => this.press(this.keys.flush()), wait);
	}

	/** Gives the terminal back and stops, as a shell asks with Ctrl-Z; `fg` goes on. */
	private readonly suspend = (): void => {
		for (const effect of leaving(this.store.read().app)) this.performer.perform(this.store.read().app, effect);
		this.terminal.giveBack();
		process.off('SIGTSTP', this.suspend);
		// Whoever started us stops along, or the shell would wait for them.
		process.kill(0, 'SIGTSTP');
		setTimeout(this.retake, notStopped);
	};

	private readonly retake = (): void => {
		if (this.ended) return;
		process.off('SIGTSTP', this.suspend);
		process.on('SIGTSTP', this.suspend);
		this.terminal.take();
	};

	private stop(status: number): void {
		for (const effect of leaving(this.store.read().app)) this.performer.perform(this.store.read().app, effect);
		this.end(status);
	}

	private end(status: number, app = this.store.read().app): void {
		this.close();
		const sheet = app.interview?.sheet ?? null;
		this.resolve({ status, sheet, unsaved: this.performer.unsaved });
	}

	private readonly fail = (error: unknown): void => {
		this.close();
		this.reject(error);
	};

	private close(): void {
		if (this.ended) return;
		this.ended = true;
		clearTimeout(this.figures);
		clearTimeout(this.held);
		try {
			this.unmount();
		} catch {
			// Drawing may be what broke: the terminal is given back all the same.
		}
		this.terminal.giveBack();
	}
}
