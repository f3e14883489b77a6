/** What an audit can be written as: the ending of the file, and what help adds to it. */
export const formats = {
	md: 'pictures and details beside it',
	html: '',
	json: '',
	csv: 'wiring worksheet',
} as const;

export type Format = keyof typeof formats;

/** The endings of files, `.md` first. */
export const endings: readonly string[] = Object.keys(formats).map(format => `.${format}`);

/** The list as help says it. */
export const formatsInWords = Object.entries(formats)
	.map(([ending, adds]) => (adds === '' ? `.${ending}` : `.${ending} (${adds})`))
	.join(', ');
