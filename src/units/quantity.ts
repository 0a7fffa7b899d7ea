// Which number types does the program use inside? One system: mm, N, MPa, kg, degC, rad, s.

declare const unit: unique symbol;

/** A plain number that remembers its unit for the compiler; costs nothing when the program runs. */
export type Quantity<U extends string> = number & { readonly [unit]?: U };

export type Mm = Quantity<"mm">;
export type Newton = Quantity<"N">;
export type Megapascal = Quantity<"MPa">;
export type Kilogram = Quantity<"kg">;
export type Celsius = Quantity<"degC">;
export type Radian = Quantity<"rad">;
/** Stiffness along an axis, E times A. */
export type AxialStiffness = Quantity<"N axial">;
/** Money in whole cents, so that sums are exact. */
export type Cents = Quantity<"cents">;
