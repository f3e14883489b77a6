/** Where in a table something is: both count from 1, as an editor shows them; the column counts cells. */
export interface Place {
	readonly line: number;
	readonly column?: number;
}

export const placed = ({ line, column }: Place): string =>
	column === undefined ? `line ${line}` : `line ${line}, column ${column}`;

/** A text that cannot be read as a table: the place where there is one, what was found, what is accepted. */
export class BadTable extends Error {
	override readonly name = 'BadTable';
	readonly found: string;
	readonly accepted: string;
	readonly place: Place | undefined;

	constructor(found: string, accepted: string, place?: Place) {
		super(`${place ? `${placed(place)}: ` : ''}found ${found}; accepted: ${accepted}`);
		this.found = found;
		this.accepted = accepted;
		this.place = place;
	}
}

/** What is repeated in a message: short, and free of signs that steer a terminal. */
export const shownCell = (text: string): string => {
	const plain = text.replace(/\s+/g, ' ').replace(/\p{C}/gu, '');
	const head = [...plain.slice(0, 200)].slice(0, 30).join('');
	return `"${head}${head === plain ? '' : '...'}"`;
};
