import { EventEmitter } from 'node:events';
import { render } from 'ink';
import type { App } from '../../src/tui/app.ts';
import { Screen } from '../../src/tui/screen.tsx';
import { Store } from '../../src/tui/store.ts';

/** A window of a size that keeps the last frame drawn in it. */
class Window extends EventEmitter {
	last = '';
	readonly columns: number;
	readonly rows: number;
	constructor(columns: number, rows: number) {
		super();
		this.columns = columns;
		this.rows = rows;
	}
	write(frame: string): void {
		this.last = frame;
	}
}

/** The frame of an app as the drawing library draws it in a window of this size. */
export function drawn(app: App, columns: number, rows: number): string {
	const window = new Window(columns, rows);
	const { unmount } = render(<Screen store={new Store(app, columns, rows)} ready={() => {}} />, {
		stdout: window as never,
		debug: true,
		exitOnCtrlC: false,
		patchConsole: false,
	});
	const frame = window.last;
	unmount();
	return frame
		.split('\n')
		.map(line => line.trimEnd())
		.join('\n');
}
