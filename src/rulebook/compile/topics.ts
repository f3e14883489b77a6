import type { Section } from '../rulebook.ts';
import { type Fields, quote } from './fields.ts';

/** A file with questions and rules: one page of the interview. */
export interface TopicFile {
	readonly root: Fields;
	readonly section: string;
	readonly topic: string;
	readonly place: number;
}

/** Folders of rules/ that hold no topics. */
const other = ['examples', 'procedures'];

/** Topics with a folder of their own on the pages of a section. */
export const housed: Readonly<Record<string, string>> = { plugs: 'harness' };

/** Topic files are those in a folder named after a section. In the order of the interview. */
export function topicFiles(roots: ReadonlyMap<string, Fields>, sections: readonly Section[]): TopicFile[] {
	const order = new Map(sections.map(({ id }, index) => [id, index]));
	const found = [...roots].flatMap(([path, root]): TopicFile[] => {
		const folder = path.split('/')[0]!;
		const section = Object.hasOwn(housed, folder) ? housed[folder]! : folder;
		if (!path.includes('/') || other.includes(folder)) return [];
		if (!order.has(section)) {
			root.reportStart(`the folder ${quote(section)} is no section of rules/sections.yaml: move the file`);
			return [];
		}
		return [{ root, section, topic: root.text('topic'), place: root.number('place') }];
	});
	const seen = new Map<string, string>();
	for (const { topic, root } of found) {
		if (seen.has(topic)) root.report('topic', `the topic ${quote(topic)} is already in ${seen.get(topic)}`);
		seen.set(topic, root.source.path);
	}
	const rank = (file: TopicFile) => order.get(file.section)!;
	return found.sort((a, b) => rank(a) - rank(b) || a.place - b.place || (a.topic < b.topic ? -1 : 1));
}
