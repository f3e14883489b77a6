/** A few words for an answer or a quantity, from its id: `injectors.rated_flow` is "rated flow". */
export const labelOf = (id: string): string => id.slice(id.indexOf('.') + 1).replaceAll('_', ' ');
