// Whose word on a job stands: that of this phone, or that of the server.

/** Up to which entry of the server's a word on a job knows it. */
export interface Word {
  readonly cursor?: number;
}

/** This phone's own word, unless the server's is on each of the job's entries up to `newest`, and some are new to this phone. */
export function laterWord<Said extends Word>(own: Said | null, servers: Said | null, newest: number): Said | null {
  if (own === null || servers === null) return own ?? servers;
  return servers.cursor === newest && newest > (own.cursor ?? 0) ? servers : own;
}
