package plyscape.shop;

/**
 * Families of glue with the spread and the pressure to start from where its data sheet says
 * nothing. All common practice, not measured by us; the maker's data sheet comes first.
 */
public enum Glue {
  PVA("PVA wood glue", 175, false),
  UREA("urea resin", 175, false),
  HIDE("hide glue", 200, false),
  POLYURETHANE("polyurethane", 150, false),
  EPOXY("epoxy", 200, true);

  private final String label;
  private final double spreadGPerM2;
  private final boolean contactPressure;

  Glue(String label, double spreadGPerM2, boolean contactPressure) {
    this.label = label;
    this.spreadGPerM2 = spreadGPerM2;
    this.contactPressure = contactPressure;
  }

  /** Name for people. */
  public String label() {
    return label;
  }

  /** Spread on one side of each glue line, g/m2; PVA and urea between the usual 150 and 200. */
  public double spreadGPerM2() {
    return spreadGPerM2;
  }

  /** Whether it fills gaps and wants contact only: more pressure starves the line. */
  public boolean contactPressure() {
    return contactPressure;
  }
}
