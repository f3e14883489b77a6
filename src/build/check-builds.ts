import type { Model } from '../audit/model.ts';
import { relevanceOf } from '../interview/relevance.ts';
import type { SourceText } from '../rulebook/compile/source.ts';
import { sheetOf } from '../rulebook/examples.ts';
import { splitId } from '../sheet/sheet.ts';

/** What a named build is asked and does not answer, each with the place where the answer belongs: after the last line. */
export function withoutAnswer({ rulebook, ...model }: Model, texts: readonly SourceText[]): string[] {
	return Object.entries(rulebook.builds).flatMap(([name, build]) => {
		const { inEffect } = relevanceOf({ rulebook, ...model }, sheetOf(name, build));
		const open = rulebook.questions.filter(question => !Object.hasOwn(build, question.id) && inEffect(question));
		return open.map(({ id }) => {
			const path = `examples/${name}/${splitId(id)[0]}.yaml`;
			const line = texts.find(text => text.path === path)?.text.split('\n').length ?? 1;
			return `${path}:${line}:1 ${id}: this build is asked it, give its answer`;
		});
	});
}
