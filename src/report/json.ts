/**
 * JSON whose bytes are harmless on a terminal as well: what JSON leaves raw and a terminal obeys (delete, the second set
 * of control characters, marks that turn the writing, invisible tags) is written as an escape. It reads back as the same value.
 */
export const printJson = (value: unknown, indent = 0): string => harmlessJson(JSON.stringify(value, null, indent));

/** The same of a JSON text. Of one that is nothing but ASCII only delete is touched. */
export function harmlessJson(json: string): string {
	return json.replace(
		/[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|\udb40[\udc00-\udc7f]/g,
		signs => signs.replace(/./gs, sign => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`),
	);
}
