import type { PartsAnswer } from '../../shop/parts.ts';

/** Each part and each feature as its sentences. */
export function partsText(answer: PartsAnswer): string {
  const parts = [...answer.turned, ...answer.faced, ...answer.blocks];
  const paragraphs = parts.map((part) => `${part.name}\n  ${part.text}`);
  const wear = answer.wear.map((feature) => `${feature.name}\n  ${feature.text}`);
  const doubt = answer.doubt_known
    ? []
    : [
        'The poses came without sds, so what they leave unsure is not in the ± above (± is two sd); where none is shown no doubt is known.',
      ];
  return [
    ...paragraphs,
    ...(wear.length ? ['Wear', ...wear] : []),
    ...(parts.length && answer.doubt_known
      ? ['± is two sd, from the sds of the poses and of what was given beside them.']
      : doubt),
  ].join('\n\n');
}
