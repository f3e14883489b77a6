/** What a stored trouble code is about. */
export interface TroubleCode {
	readonly title: string;
	/** What to do about it first; it names no unit that differs by unit set. */
	readonly action: string;
	readonly topics: readonly string[];
	readonly rules: readonly string[];
}
