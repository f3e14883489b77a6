import type { Assessment } from '../../audit/assess.ts';
import { type Block, heading, strong } from '../document.ts';

/** As many as one evening holds. */
const most = 12;

/** What to measure next: the answers that could turn the most lines. */
export function next({ audit, model }: Assessment): Block[] {
	if (audit.next.length === 0) return [];
	const ask = (id: string) => model.rulebook.questions.find(question => question.id === id)?.ask ?? id;
	const items = audit.next
		.slice(0, most)
		.map(({ answer, why, effort }) => [
			strong(ask(answer)),
			` ${why.charAt(0).toUpperCase()}${why.slice(1)} (${{ look: 'a look', gauge: 'a gauge or a meter', test: 'a test' }[effort]}).`,
		]);
	return [heading(2, 'Measure next'), { is: 'steps', items }];
}
