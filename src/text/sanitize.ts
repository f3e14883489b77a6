/** Terminal escape sequences, whole: colors and cursor moves (ECMA-48 CSI), titles and links (OSC). */
const sequences =
	/(?:\u001b\[|\u009b)[0-?]*[ -/]*[@-~]|(?:\u001b\]|\u009d)[^\u0007\u001b\u009c]*(?:\u0007|\u001b\\|\u009c)/g;

/**
 * Free text made harmless for any surface, the terminal among them: escape sequences are dropped whole; line breaks and
 * tabs become spaces; control characters, marks that turn the direction of writing, and lone surrogates are dropped.
 */
export function sanitize(text: string): string {
	if (/^[ -~]*$/.test(text)) return text;
	return text
		.replace(sequences, '')
		.replace(/[\r\n\t\v\f\u0085\u2028\u2029]+/g, ' ')
		.replace(/\p{Cc}|[\u061c\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e007f}]/gu, '')
		.replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '');
}

/** As much as a note or a list of answers needs, in UTF-16 units; a field takes no more. */
export const longestField = 4000;

/**
 * What may stand in a field that is typed or pasted into: escape sequences dropped whole, no other control characters, no
 * marks that turn the direction of writing; line breaks and tabs of a table stay. Cut to the longest that a field takes.
 */
export function typable(text: string): string {
	return text
		.slice(0, 4 * longestField)
		.replace(sequences, '')
		.replace(/\r\n?/g, '\n')
		.replace(/\n+$/, '')
		.replace(/[^\P{Cc}\n\t]|[\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff]|[\u{e0000}-\u{e007f}]/gu, '')
		.replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '')
		.slice(0, longestField)
		.replace(/[\ud800-\udbff]$/, '');
}
