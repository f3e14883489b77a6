import { isMap, isScalar, isSeq, type YAMLMap } from 'yaml';
import { offsetOf, type Source } from './source.ts';

/** A scalar text with the place it stands at. */
export interface Placed {
	readonly text: string;
	readonly offset: number;
}

/** Reads the fields of one YAML mapping, noting what is missing, of the wrong kind, or not a field at all. */
export class Fields {
	readonly source: Source;
	readonly offset: number;
	private readonly map: YAMLMap;
	private readonly asked = new Set<string>();

	constructor(source: Source, map: YAMLMap) {
		this.source = source;
		this.map = map;
		this.offset = offsetOf(map);
	}

	private node(key: string): unknown {
		this.asked.add(key);
		return this.map.get(key, true) ?? undefined;
	}

	has(key: string): boolean {
		return this.node(key) !== undefined;
	}

	/** The place of a field, or of the mapping when the field is not there. */
	at(key: string): number {
		const node = this.node(key);
		return node === undefined ? this.offset : offsetOf(node);
	}

	report(key: string, message: string): void {
		this.source.report(this.at(key), message);
	}

	/** The raw value of a field as plain data. */
	data(key: string): unknown {
		const node = this.node(key) as { toJSON?: () => unknown } | undefined;
		return node?.toJSON?.();
	}

	/** A text (numbers and yes/no written bare count as their text), or null with a note when it is needed and not there. */
	placed(key: string, need = true): Placed | null {
		const node = this.node(key);
		if (isScalar(node) && node.value !== null && typeof node.value !== 'object') {
			const quoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE';
			const text = typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));
			if (text.trim() !== '') return { text, offset: offsetOf(node) + (quoted ? 1 : 0) };
		}
		if (need || node !== undefined) this.report(key, `${key}: a text is needed here`);
		return null;
	}

	text(key: string, need = true): string {
		return this.placed(key, need)?.text.replace(/\s+/g, ' ').trim() ?? '';
	}

	/** A text that must be one of a list. */
	oneOf<T extends string>(key: string, accepted: readonly T[], otherwise: T): T {
		const placed = this.placed(key);
		if (placed === null) return otherwise;
		if ((accepted as readonly string[]).includes(placed.text)) return placed.text as T;
		this.report(key, `${key}: ${quote(placed.text)} is not one of ${accepted.join(', ')}`);
		return otherwise;
	}

	number(key: string): number {
		const node = this.node(key);
		if (isScalar(node) && typeof node.value === 'number' && Number.isFinite(node.value)) return node.value;
		this.report(key, `${key}: a number is needed here`);
		return 0;
	}

	/** A list of texts; one text alone counts as a list of one. */
	texts(key: string, need = true): string[] {
		return this.placedList(key, need).map(({ text }) => text.replace(/\s+/g, ' ').trim());
	}

	placedList(key: string, need = true): Placed[] {
		const node = this.node(key);
		if (isScalar(node) && node.value !== null) return [{ text: String(node.value), offset: offsetOf(node) }];
		if (isSeq(node)) {
			return node.items.flatMap(item => {
				if (isScalar(item) && item.value !== null) return [{ text: String(item.value), offset: offsetOf(item) }];
				this.source.report(offsetOf(item), `${key}: a list of texts is needed here`);
				return [];
			});
		}
		if (need || node !== undefined) this.report(key, `${key}: a list of texts is needed here`);
		return [];
	}

	/** A mapping inside this one. */
	inner(key: string, need = true): Fields | null {
		const node = this.node(key);
		if (isMap(node)) return new Fields(this.source, node);
		if (need || node !== undefined) this.report(key, `${key}: a mapping (name: value) is needed here`);
		return null;
	}

	/** A list of mappings inside this one. */
	innerList(key: string, need = true): Fields[] {
		const node = this.node(key);
		if (isSeq(node)) {
			return node.items.flatMap(item => {
				if (isMap(item)) return [new Fields(this.source, item)];
				this.source.report(offsetOf(item), `${key}: each item is a mapping (name: value)`);
				return [];
			});
		}
		if (need || node !== undefined) this.report(key, `${key}: a list is needed here`);
		return [];
	}

	isList(key: string): boolean {
		return isSeq(this.node(key));
	}

	/** The names of this mapping. */
	keys(): string[] {
		return this.map.items.map(({ key }) => String(isScalar(key) ? key.value : key));
	}

	/** Notes every name that nobody asked for. */
	refuseRest(): void {
		for (const { key } of this.map.items) {
			const name = String(isScalar(key) ? key.value : key);
			if (this.asked.has(name)) continue;
			this.source.report(offsetOf(key), `${quote(name)} is not a field here; fields are ${[...this.asked].join(', ')}`);
		}
	}
}

/** A found text as shown in an error: short, on one line. */
export function quote(text: string): string {
	const shown = text.length > 60 ? `${text.slice(0, 57)}...` : text;
	return JSON.stringify(shown);
}
