/** One key as it was pressed, or a whole paste. */
export type Key =
	| { readonly key: 'text'; readonly text: string }
	| { readonly key: 'paste'; readonly text: string }
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
};

const pasteStart = '[200~';
const pasteEnd = '\u001b[201~';

/**
 * Turns what arrives from the terminal into keys, one by one, however it was cut into reads: a fast typist's keys in one
 * read, an escape sequence or a paste over several.
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

	/** Whether something is held back that may be the start of a sequence. */
	get waiting(): boolean {
		return this.rest !== '' && !this.rest.startsWith(`\u001b${pasteStart}`);
	}

	/** Nothing more came in a moment: what is held back is an escape of its own. */
	flush(): Key[] {
		if (!this.waiting) return [];
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
		return { key: 'text', text: character! };
	}

	private sequence(): Key | undefined | null {
		if (this.rest.startsWith(`\u001b${pasteStart}`)) return this.paste();
		const found = /^\u001b(\[[0-9;?]*[ -/]*[@-~]|O[A-Za-z])/.exec(this.rest);
		if (found) {
			this.rest = this.rest.slice(found[0].length);
			const name = sequences[found[1]!.replace(/^\[1;\d+/, '[')];
			return name && { key: name };
		}
		if (/^\u001b(\[[0-9;?]*[ -/]*)?$|^\u001bO$/.test(this.rest)) return null;
		this.rest = this.rest.slice(1);
		return { key: 'escape' };
	}

	private paste(): Key | null {
		const end = this.rest.indexOf(pasteEnd);
		if (end < 0) return null;
		const text = this.rest.slice(1 + pasteStart.length, end);
		this.rest = this.rest.slice(end + pasteEnd.length);
		return { key: 'paste', text };
	}
}
