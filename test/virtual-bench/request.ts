/** Readings of one load as a request holds them. */
export interface Series {
  readings: string[];
  unit?: string;
  zero_before?: string;
  zero_after?: string;
  zeroed?: "once" | "each";
  balance?: Record<string, number>;
}

/** A request to `underhook compute`, by the published contract; values the virtual bench does not change stay open. */
export interface Request {
  id: string;
  method: string;
  dry: Series;
  immersed?: Series;
  rise?: Series;
  flask?: { full: Series; with_piece: Series; liquid_g?: number; warmer_c?: number; warmer_u_c?: number };
  dimensions?: Record<string, unknown>;
  liquid?: Record<string, unknown>;
  air: Record<string, number>;
  balance: Record<string, number>;
  hanger?: Record<string, unknown>;
  bubble_allowance_mg?: number;
  pieces: number;
  odd_density_g_cm3?: number;
  added?: Record<string, unknown>[];
  claim?: string;
  confidence: number;
}
