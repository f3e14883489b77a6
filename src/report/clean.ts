/**
 * Free text made harmless for any surface: line breaks and tabs become spaces; control characters, marks that turn the
 * direction of writing, and lone surrogates are dropped.
 */
export function clean(text: string): string {
	return text
		.replace(/[\r\n\t\v\f\u0085\u2028\u2029]+/g, ' ')
		.replace(/\p{Cc}|[\u061c\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e007f}]/gu, '')
		.replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '');
}
