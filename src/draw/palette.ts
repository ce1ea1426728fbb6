/**
 * The colours of every drawing: the screen's variables where a screen defines them (both themes), else the light theme, so that
 * a drawing stands alone on paper. Blue is kept for contact and for what is proven, lead for outside and wrong; all else is ink.
 */
export const palette = {
  paper: 'var(--paper, #f1f3ed)',
  sheet: 'var(--sheet, #fcfdfa)',
  steel: 'var(--steel, #dde2dd)',
  ink: 'var(--ink, #12202a)',
  ink2: 'var(--ink-2, #44535c)',
  edge: 'var(--edge, #6b7982)',
  line: 'var(--line, #c6ccc6)',
  blue: 'var(--blue, #134a9e)',
  blueWash: 'var(--blue-wash, #d9e4f1)',
  lead: 'var(--lead, #a3380a)',
  leadWash: 'var(--lead-wash, #f7e0d2)',
} as const;

export const typeface = "var(--face, 'Archivo Variable', Archivo, system-ui, sans-serif)";

/** The least size of letters in a drawing at its natural size, px. */
export const leastText = 14;
