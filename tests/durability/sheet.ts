/** A counting sheet of 40 kB whose every part holds the count, so that a mix of two would be seen. */
export function sheetOf(count: number): string {
	return `${JSON.stringify({ count, body: Array(8000).fill(count % 1000) })}\n`;
}

/** The count of a sheet; throws when it is not one of these sheets to the last byte. */
export function countOf(text: string): number {
	const { count } = JSON.parse(text);
	if (text !== sheetOf(count)) throw new Error('the sheet is a mix of two');
	return count;
}
