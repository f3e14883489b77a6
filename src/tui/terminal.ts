import type { Painter } from './painter.ts';

/** Modes of the terminal that are turned on while the screen is ours, and off again (xterm's private modes). */
const mode = (number: number) => ({ on: `\u001b[?${number}h`, off: `\u001b[?${number}l` });
const alternateScreen = mode(1049);
const markedPastes = mode(2004);
const cursor = mode(25);

/** Asks for the background's color; terminals that know the question answer on standard input (xterm's OSC 11). */
const askBackground = '\u001b]11;?\u001b\\';

/** The terminal as this process has it: taken while the screen is ours, given back as it was. */
export class Terminal {
	private readonly painter: Painter;
	private taken = false;
	private ready = false;

	constructor(painter: Painter) {
		this.painter = painter;
	}

	/** Takes the screen and the keys. */
	take(): void {
		const { stdin, stdout } = process;
		this.taken = true;
		// Whoever had the terminal meanwhile may have left it in any mode.
		stdin.setRawMode(false);
		stdin.setRawMode(true);
		stdin.resume();
		stdout.write(alternateScreen.on + cursor.off);
		if (this.ready) stdout.write(markedPastes.on);
		this.painter.repaint();
	}

	/** Says that keys are taken from here on: pastes come marked. Tests wait for this before they type. */
	announce(): void {
		if (this.ready) return;
		this.ready = true;
		process.stdout.write(markedPastes.on + (process.env.TERM === 'linux' ? '' : askBackground));
	}

	/** Gives the terminal back as it was. */
	giveBack(): void {
		if (!this.taken) return;
		this.taken = false;
		const { stdin, stdout } = process;
		this.painter.pause();
		stdin.setRawMode(false);
		stdin.pause();
		stdout.write(markedPastes.off + cursor.on + alternateScreen.off);
	}
}
