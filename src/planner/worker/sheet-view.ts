// The build sheet as it goes to the page: a switched machine's as finished markup of the site's own sheet, any other as plain data.
export interface SheetRow {
  readonly head: string;
  readonly cells: readonly string[];
}

export interface SheetTable {
  readonly title: string;
  readonly heads: readonly string[];
  readonly rows: readonly SheetRow[];
  /** Rows are ticked off one by one. */
  readonly ticks: boolean;
}

export interface SheetDrawing {
  readonly title: string;
  /** For a phone, and for a page on a desk. SVG text. */
  readonly narrow: string;
  readonly wide: string;
}

export interface SheetStep {
  readonly does: string;
  readonly expect: readonly string[];
  readonly power: "on" | "off";
}

/** Why a machine that is run in several ways has no wiring. */
export interface NoSwitch {
  readonly says: string;
  readonly reasons: readonly string[];
  readonly waysOut: readonly string[];
}

export type SheetView =
  | { readonly kind: "switched"; readonly title: string; readonly html: string }
  | {
      readonly kind: "plain";
      readonly title: string;
      readonly noSwitch?: NoSwitch | undefined;
      readonly cautions: readonly { readonly title: string; readonly says: string; readonly stop: boolean }[];
      readonly tables: readonly SheetTable[];
      readonly drawings: readonly SheetDrawing[];
      readonly bench: readonly SheetStep[];
    };
