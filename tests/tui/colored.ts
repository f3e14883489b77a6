import type { App } from '../../src/tui/app.ts';
import { compose } from '../../src/tui/frame.ts';
import { glyphs, paints, styleOf } from '../../src/tui/theme.ts';
import { frameOf } from '../../src/tui/view.ts';

/** What is colored in a frame, row by row: `12 engine "38.1 psi"`. A color that the theme does not name stands as it is. */
export function colored(app: App, columns: number, rows: number): string {
	const { appearance } = app;
	const { background } = appearance;
	const named = (color: string) =>
		Object.entries(paints).find(([, paint]) => paint[background] === color)?.[0] ?? color;
	const { full, rest, edge } = glyphs(appearance);
	const isBar = (text: string) => [...text].every(character => [full, rest, edge].includes(character));
	return compose(frameOf(app, columns - 1), columns, rows, appearance)
		.flatMap((line, row) =>
			(line.parts ?? [line]).flatMap(({ text, look }) => {
				const { color, inverse } = styleOf(look, appearance);
				if (color === undefined || text.trim() === '') return [];
				const words = isBar(text) ? 'a bar' : JSON.stringify(text.trim());
				return [`${String(row + 1).padStart(2)} ${named(String(color))}${inverse ? ' inverse' : ''} ${words}`];
			}),
		)
		.join('\n');
}
