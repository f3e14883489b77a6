import { isMap, isScalar, isSeq, type Pair, type Scalar, type YAMLMap } from 'yaml';
import type { Source } from './source.ts';
import { keyName, offsetOf } from './yaml.ts';

/** A scalar text with the place it stands at. */
export interface Placed {
	readonly text: string;
	readonly offset: number;
}

/** Reads the fields of one YAML mapping, noting what is missing, of the wrong kind, or not a field at all. */
export class Fields {
	readonly source: Source;
	readonly offset: number;
	private readonly pairs: ReadonlyMap<string, Pair>;
	private readonly asked = new Set<string>();

	constructor(source: Source, map: YAMLMap) {
		this.source = source;
		this.offset = offsetOf(map);
		this.pairs = new Map(map.items.map(pair => [keyName(pair.key) ?? '', pair]));
	}

	private node(key: string): unknown {
		this.asked.add(key);
		return this.pairs.get(key)?.value ?? undefined;
	}

	has(key: string): boolean {
		return this.node(key) !== undefined;
	}

	report(key: string, message: string): void {
		const node = this.node(key);
		this.source.report(node === undefined ? this.offset : offsetOf(node), message);
	}

	/** Notes what only a pack may have. */
	advise(key: string, message: string): void {
		const node = this.node(key);
		this.source.advise(node === undefined ? this.offset : offsetOf(node), message);
	}

	/** Notes a problem with the mapping as a whole. */
	reportStart(message: string): void {
		this.source.report(this.offset, message);
	}

	/** Notes a problem with the name of a field itself. */
	reportName(key: string, message: string): void {
		this.source.report(offsetOf(this.pairs.get(key)?.key), message);
	}

	/** The raw value of a field as plain data. */
	data(key: string): unknown {
		const node = this.node(key) as { toJSON?: () => unknown } | undefined;
		return node?.toJSON?.();
	}

	/** A text (numbers and yes/no written bare count as their text), or null with a note when it is needed and not there. */
	placed(key: string, need = true): Placed | null {
		const node = this.node(key);
		const placed = isScalar(node) ? placedScalar(node) : null;
		if (placed && placed.text.trim() !== '') return placed;
		if (need || node !== undefined) this.report(key, `${key}: a text is needed here`);
		return null;
	}

	text(key: string, need = true): string {
		return onOneLine(this.placed(key, need)?.text ?? '');
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
		return this.placedList(key, need).map(({ text }) => onOneLine(text));
	}

	placedList(key: string, need = true): Placed[] {
		const node = this.node(key);
		const parts = isSeq(node) ? node.items : node === undefined ? [] : [node];
		if (need && parts.length === 0) this.report(key, `${key}: a list of texts is needed here`);
		return parts.flatMap(part => {
			const placed = isScalar(part) ? placedScalar(part) : null;
			if (placed && placed.text.trim() !== '') return [placed];
			this.source.report(offsetOf(part), `${key}: a list of texts is needed here`);
			return [];
		});
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

	isMapping(key: string): boolean {
		return isMap(this.node(key));
	}

	/** The names of this mapping. */
	keys(): string[] {
		return [...this.pairs.keys()];
	}

	/** Notes every name that nobody asked for. */
	refuseRest(): void {
		for (const name of this.pairs.keys()) {
			if (!this.asked.has(name))
				this.reportName(name, `${quote(name)} is not a field here; fields are ${[...this.asked].join(', ')}`);
		}
	}
}

/** The text of a scalar as it is written, without its quotes, and where that begins. */
function placedScalar(node: Scalar): Placed | null {
	if (node.value === null || node.value === undefined) return null;
	const quoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE';
	const text = typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));
	return { text, offset: offsetOf(node) + (quoted ? 1 : 0) };
}

const onOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** A found text as shown in an error: short, on one line. */
export function quote(text: string): string {
	return JSON.stringify(text.length > 60 ? `${text.slice(0, 57)}...` : text);
}
