package plyscape.shop;

/**
 * What the maker decides about a pressing. Immutable.
 *
 * @param widthMm finished panel, X
 * @param heightMm finished panel, Y
 * @param trimMm cut off each side after pressing
 * @param glue family
 * @param spreadGPerM2 one side of each glue line, or null for the family's default
 * @param wasteShare glue that stays in pot and roller, as a share of what is needed
 * @param press how it is pressed
 * @param pressureMpa or null for what the woods want (or the bag gives)
 * @param forceEachKn of one jack or clamp
 * @param openMin open time from the glue's data sheet, or null
 * @param pressMin press time from the same, or null
 * @param moistureFrom of the sheets at pressing, percent
 * @param moistureTo of the panel where it will hang, percent, or null
 * @param quartered whether the veneer is quarter-cut, so that its thickness runs along the rings
 */
public record PressingOrder(
    double widthMm,
    double heightMm,
    double trimMm,
    Glue glue,
    Double spreadGPerM2,
    double wasteShare,
    Press press,
    Double pressureMpa,
    double forceEachKn,
    Double openMin,
    Double pressMin,
    double moistureFrom,
    Double moistureTo,
    boolean quartered) {}
