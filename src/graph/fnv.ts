/**
 * A text as a number of 32 bits: the FNV-1a hash of Fowler, Noll and Vo (IETF draft-eastlake-fnv), of UTF-16 units in place of
 * bytes. Draws and the records of audits in sheets rest on it: it never changes.
 */
export function fnv1a(text: string): number {
	let hash = 0x811c9dc5;
	for (let index = 0; index < text.length; index++) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
	return hash >>> 0;
}
