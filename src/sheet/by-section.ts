import type { Question } from './question.ts';
import { splitId } from './sheet.ts';

type BySection = ReadonlyMap<string, ReadonlyMap<string, Question>>;

const known = new WeakMap<readonly Question[], BySection>();

/** Questions by section and by their name in it, as a sheet has its answers. */
export function bySection(questions: readonly Question[]): BySection {
	let sections = known.get(questions);
	if (!sections) {
		const made = new Map<string, Map<string, Question>>();
		for (const question of questions) {
			const [section, name] = splitId(question.id);
			const asked = made.get(section);
			if (asked) asked.set(name, question);
			else made.set(section, new Map([[name, question]]));
		}
		known.set(questions, (sections = made));
	}
	return sections;
}
