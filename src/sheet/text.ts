import type { UnitSet } from '../units/shown.ts';

/** A text of the rulebook: one for everybody, or one for each unit set where it has figures with a unit. */
export type Text = string | Readonly<Record<UnitSet, string>>;

/** A text as a reader of one unit set gets it. */
export const textIn = (text: Text, set: UnitSet): string => (typeof text === 'string' ? text : text[set]);

/** Its forms: one or two. */
export const formsOf = (text: Text): readonly string[] => (typeof text === 'string' ? [text] : [text.us, text.metric]);

/** A text made for each set; one text where both come out alike. */
export function forBoth(form: (set: UnitSet) => string): Text {
	const [us, metric] = [form('us'), form('metric')];
	return us === metric ? us : { us, metric };
}
