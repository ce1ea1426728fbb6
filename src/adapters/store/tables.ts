/** The tables as Kysely is told of them. */
export interface Tables {
  job: { id: string; place: number };
  entry: { job: string; seq: number; id: string; at: string; kind: string; deed: string };
  kit_entry: { seq: number; id: string; at: string; kind: string; deed: string };
  /** Photos that several servers share: PostgreSQL alone. */
  photo: { hash: string; format: string; bytes: Uint8Array };
  /** Devices and invitations that several servers share: PostgreSQL alone; n runs 1, 2, 3 … in the order of writing. */
  device_line: { n: number; kind: string; device: string | null; line: string };
}
