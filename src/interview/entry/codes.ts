import type { Reader } from './reader.ts';

/** Stored trouble codes, in any case and with anything between: `p0340 P0171`. */
export const readCodes: Reader = (_, text) => {
	const codes = /^none$/i.test(text) ? [] : text.toUpperCase().split(/[\s,;]+/);
	return { answer: { value: [...new Set(codes.filter(code => code !== ''))] } };
};
