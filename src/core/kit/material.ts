/** What a reference or a machine is made of. Doubts are one sd, common practice of what a shop can know without a certificate. */
export interface Material {
  readonly name: string;
  readonly density_kg_m3: number;
  readonly modulus_GPa: number;
  readonly modulus_sd_GPa: number;
  readonly expansion_um_mK: number;
  readonly expansion_sd_um_mK: number;
  readonly source: string;
}

export const materials = {
  steel: {
    name: 'steel',
    density_kg_m3: 7850,
    modulus_GPa: 210,
    modulus_sd_GPa: 4,
    expansion_um_mK: 11.5,
    expansion_sd_um_mK: 0.5,
    source: 'expansion of gauge steel as in JCGM 100:2008 H.1 (second hand); density and modulus from memory',
  },
  'cast iron': {
    name: 'cast iron',
    density_kg_m3: 7200,
    modulus_GPa: 110,
    modulus_sd_GPa: 8,
    expansion_um_mK: 10.8,
    expansion_sd_um_mK: 0.5,
    source: 'expansion seen in a plate maker’s table; density and modulus from memory',
  },
  granite: {
    name: 'granite',
    density_kg_m3: 3000,
    modulus_GPa: 60,
    modulus_sd_GPa: 10,
    expansion_um_mK: 6.5,
    expansion_sd_um_mK: 1,
    source:
      'modulus 39 to 65 GPa seen in a maker’s text on DIN 876; expansion 4 to 8 µm per m and K from memory: ask the plate’s maker',
  },
} as const satisfies Record<string, Material>;

export type MaterialName = keyof typeof materials;
