package plyscape.plan;

/** Expected times in s, without tool changes and spindle start; and the bound no plan that respects the stepover beats. */
public record PlanTime(double cutS, double rapidS, double totalS, double lowerBoundS) {}
