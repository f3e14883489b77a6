/** One key as it was pressed, or a whole paste. */
export type Key =
	| { readonly key: 'text'; readonly text: string }
	| { readonly key: 'paste'; readonly text: string }
	/** The terminal's answer about its background. */
	| { readonly key: 'background'; readonly light: boolean }
	| { readonly key: Named };

export type Named =
	| 'up'
	| 'down'
	| 'left'
	| 'right'
	| 'home'
	| 'end'
	| 'page-up'
	| 'page-down'
	| 'enter'
	| 'tab'
	| 'shift-tab'
	| 'escape'
	| 'backspace'
	| 'delete'
	| 'f1'
	| `ctrl-${string}`;

/** Escape sequences of keys that terminals agree on (ECMA-48 and xterm's, with and without application mode). */
const sequences: Readonly<Record<string, Named>> = {
	'[A': 'up',
	'[B': 'down',
	'[C': 'right',
	'[D': 'left',
	OA: 'up',
	OB: 'down',
	OC: 'right',
	OD: 'left',
	'[H': 'home',
	'[F': 'end',
	OH: 'home',
	OF: 'end',
	'[1~': 'home',
	'[4~': 'end',
	'[7~': 'home',
	'[8~': 'end',
	'[5~': 'page-up',
	'[6~': 'page-down',
	'[3~': 'delete',
	'[Z': 'shift-tab',
	OM: 'enter',
	OP: 'f1',
	'[11~': 'f1',
	'[[A': 'f1',
};

const pasteStart = '\u001b[200~';
const pasteEnd = '\u001b[201~';

/** Whole sequences of ECMA-48: control sequences, among them a mouse report and the first console's function keys; single shifts; strings. */
const whole =
	/^\u001b(\[M[\s\S]{3}|\[\[[A-E]|\[(?:[0-?]+[ -/]*[@-~]|[ -/]+[@-~]|[@-LN-Z\\-~])|O[A-Za-z]|[\]PX^_][^\u0007\u001b]*(?:\u0007|\u001b\\))/;
/** The beginning of one. */
const begun = /^\u001b(\[[0-?]*[ -/]*|\[M[\s\S]{0,2}|\[\[|O)?$/;
/** The beginning of a string, such as a terminal's answer about its colors: it may come in pieces. */
const stringBegun = /^\u001b[\]PX^_][^\u0007\u001b]{0,256}\u001b?$/;

/** An escape that nothing follows for so long is a key of its own, ms. */
const escapeWait = 40;
/** A paste or a terminal's answer whose end has not come for so long has lost it, ms. */
const endWait = 1000;

/** A background is light where its color is nearer to white than to black (weights of ITU-R BT.709). */
function isLight(answer: string): boolean | null {
	const found = /^\]11;rgba?:([0-9a-f]+)\/([0-9a-f]+)\/([0-9a-f]+)/i.exec(answer);
	if (!found) return null;
	const [red, green, blue] = found.slice(1).map(part => Number.parseInt(part, 16) / (16 ** part.length - 1));
	return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue! > 0.5;
}

/**
 * Turns what arrives from the terminal into keys, one by one, however it was cut into reads: a fast typist's keys in one
 * read, an escape sequence or a paste over several. What a terminal answers or reports by itself is no key.
 */
export class KeyReader {
	private rest = '';

	/** The keys of what came so far. A lone escape at the end waits: `flush` says that nothing followed it. */
	read(chunk: string): Key[] {
		this.rest += chunk;
		const keys: Key[] = [];
		for (let key = this.next(); key !== null; key = this.next()) if (key !== undefined) keys.push(key);
		return keys;
	}

	/** How long what is held back may wait for more before `flush`, ms; null: nothing is held back. */
	get wait(): number | null {
		if (this.rest === '') return null;
		return this.rest.startsWith(pasteStart) || stringBegun.test(this.rest) ? endWait : escapeWait;
	}

	/** Nothing more came in a while: a paste ends where it is, anything else held back is an escape of its own. */
	flush(): Key[] {
		if (this.rest === '') return [];
		if (this.rest.startsWith(pasteStart)) {
			const text = this.rest.slice(pasteStart.length).replace(/\u001b[[0-9]*$/, '');
			this.rest = '';
			return [{ key: 'paste', text }];
		}
		this.rest = this.rest.slice(1);
		return [{ key: 'escape' }, ...this.read('')];
	}

	/** The next key; undefined for a sequence that means nothing here; null when more must come first. */
	private next(): Key | undefined | null {
		if (this.rest === '') return null;
		if (this.rest[0] === '\u001b') return this.sequence();
		const [character] = this.rest;
		const code = character!.codePointAt(0)!;
		this.rest = this.rest.slice(character!.length);
		if (character === '\r' || character === '\n') return { key: 'enter' };
		if (character === '\t') return { key: 'tab' };
		if (code === 127 || code === 8) return { key: 'backspace' };
		if (code < 32) return { key: `ctrl-${String.fromCharCode(code + 96)}` };
		// C1 controls that stand for an escape and a letter: nobody types them.
		if (code > 127 && code < 160) return undefined;
		return { key: 'text', text: character! };
	}

	private sequence(): Key | undefined | null {
		if (this.rest.startsWith(pasteStart)) return this.paste();
		const found = whole.exec(this.rest);
		if (found) {
			this.rest = this.rest.slice(found[0].length);
			const light = isLight(found[1]!);
			if (light !== null) return { key: 'background', light };
			const name = sequences[found[1]!.replace(/^\[1;\d+/, '[')];
			return name && { key: name };
		}
		if (begun.test(this.rest) || stringBegun.test(this.rest)) return null;
		this.rest = this.rest.slice(1);
		return { key: 'escape' };
	}

	private paste(): Key | null {
		const end = this.rest.indexOf(pasteEnd);
		if (end < 0) return null;
		const text = this.rest.slice(pasteStart.length, end);
		this.rest = this.rest.slice(end + pasteEnd.length);
		return { key: 'paste', text };
	}
}
