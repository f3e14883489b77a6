import type { Question } from '../../sheet/question.ts';
import type { NamedBuild } from '../rulebook.ts';
import { readAnswer } from './example.ts';
import { type Fields, quote } from './fields.ts';

/** The named builds that examples start from: rules/examples/NAME.yaml, or NAME/ with a file a section. */
export function readBuilds(
	roots: ReadonlyMap<string, Fields>,
	questions: ReadonlyMap<string, Question>,
): Record<string, NamedBuild> {
	const builds = new Map<string, Record<string, unknown>>();
	for (const [path, root] of roots) {
		const name = /^examples\/([a-z-]+)(\/[a-z-]+)?\.yaml$/.exec(path)?.[1];
		if (name === undefined) continue;
		const build = builds.get(name) ?? {};
		builds.set(name, build);
		for (const id of root.keys()) {
			const question = questions.get(id);
			if (!question) root.reportName(id, `${quote(id)} is no answer`);
			else if (Object.hasOwn(build, id)) root.reportName(id, `${quote(id)} is answered in another file of ${name} too`);
			else build[id] = readAnswer(root, id, question);
		}
	}
	return Object.fromEntries(builds);
}
