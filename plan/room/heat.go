package room

import "dustbook/plan/unit"

// Heat is the heat that leaves with the air in winter: what has to be put
// into the air that comes in from outdoors at the design temperature.
type Heat struct {
	Figure[unit.Power]
	Trade      unit.Power // by the trade's factor of standard air, as a cross-check
	Difference float64    // between indoors and outdoors, in kelvins; never below nought
}

// heat is P = ρ Q c ΔT for a flow from outdoors.
func (k *Reckoning) heat(q unit.Flow) Heat {
	indoors, outdoors := k.shop.AirTemperature, k.shop.OutdoorDesign
	var h Heat
	if !indoors.Known() {
		h.Missing = add(h.Missing, Missing{Field: "shop.air_temperature"})
	}
	if !outdoors.Known() {
		h.Missing = add(h.Missing, Missing{Field: "shop.outdoor_design"})
	}
	if !h.Known() {
		return h
	}
	h.Difference = unit.Six(max(float64(indoors.V-outdoors.V), 0))
	h.V = unit.SixOf(Warming(k.air.Density, q, h.Difference))
	h.Trade = unit.SixOf(TradeWarming(q, h.Difference))
	return h
}

// Warming is the power that warms a flow of air by a difference in kelvins:
// P = ρ Q c ΔT, in W.
func Warming(density unit.Density, q unit.Flow, difference float64) unit.Power {
	return unit.Power(float64(density) * float64(q) * heatCapacity * difference)
}

// TradeWarming is the same by the trade's factor, 1.08 Q ΔT in Btu/h with Q
// in cfm and ΔT in °F, given in W. Range: standard air.
func TradeWarming(q unit.Flow, difference float64) unit.Power {
	const fahrenheits = 1.8 // in a kelvin
	btu := tradeHeat * float64(q/oneCFM) * difference * fahrenheits
	return unit.Power(btu * thermalUnit / float64(oneHour))
}
