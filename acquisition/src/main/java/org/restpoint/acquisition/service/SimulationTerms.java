package org.restpoint.acquisition.service;

import java.util.List;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.simulated.Beaker;
import org.restpoint.adapters.simulated.Display;
import org.restpoint.adapters.simulated.ElectrodeTraits;
import org.restpoint.adapters.simulated.Fault;
import org.restpoint.adapters.simulated.Noise;
import org.restpoint.adapters.simulated.ResponseModel;
import org.restpoint.adapters.simulated.ScheduledFault;
import org.restpoint.adapters.simulated.SimulatedSettings;
import org.restpoint.adapters.simulated.Subject;
import org.restpoint.adapters.simulated.Swing;
import org.restpoint.adapters.simulated.Visit;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.SimulatedFault;
import org.restpoint.config.station.Simulation;
import org.restpoint.config.station.Simulation.Response;

/** What a station file says of a simulated probe, in the terms of the link. */
final class SimulationTerms {

  private static final double PERCENT = 100;

  private SimulationTerms() {}

  static SimulatedSettings settings(LinkSettings.Simulated link, Probe probe, double speed) {
    return new SimulatedSettings(
        subject(link.simulation(), probe),
        link.interval(),
        link.noDataAfter(),
        link.faults().stream().map(SimulationTerms::fault).toList(),
        speed);
  }

  private static Subject subject(Simulation simulation, Probe probe) {
    if (simulation instanceof Simulation.Thermometer thermometer) {
      return new Subject.Thermometer(
          thermometer.temperature().meanCelsius(),
          swing(thermometer.temperature()),
          display(thermometer.resolution()));
    }
    Simulation.Electrode simulated = (Simulation.Electrode) simulation;
    Electrode electrode = probe.electrode().orElseThrow();
    List<Visit> visits =
        simulated.visits().stream()
            .map(visit -> visit(visit, simulated.temperature(), electrode))
            .toList();
    return new Subject.Electrode(
        traits(simulated, electrode), visits, swing(simulated.temperature()));
  }

  private static Visit visit(
      Simulation.Visit visit, Simulation.Temperature temperature, Electrode electrode) {
    return new Visit(
        new Beaker(
            molesPerLitre(visit.solution(), electrode),
            visit.celsius().orElse(temperature.meanCelsius())),
        visit.span());
  }

  /** A pH is the activity of hydrogen ions, which is what the simulated electrode answers to. */
  private static double molesPerLitre(Quantity solution, Electrode electrode) {
    return solution.unit().equals(Quantity.PH)
        ? Math.pow(10, -solution.value())
        : StationTerms.molesPerLitre(solution, electrode);
  }

  private static ElectrodeTraits traits(Simulation.Electrode simulated, Electrode electrode) {
    Simulation.Noise noise = simulated.noise();
    return new ElectrodeTraits(
        simulated.slopePercent(),
        simulated.offsetMillivolts(),
        StationTerms.analyte(electrode).charge(),
        response(simulated.response()),
        new Noise(noise.whiteMillivolts(), noise.correlatedMillivolts(), noise.correlation()),
        simulated.creepMillivoltsPerHour(),
        simulated.seed(),
        display(simulated.resolution()));
  }

  private static Swing swing(Simulation.Temperature temperature) {
    return new Swing(temperature.amplitudeKelvin(), temperature.period());
  }

  private static Display display(Simulation.Resolution resolution) {
    return new Display(resolution.millivolts(), resolution.kelvin());
  }

  private static ResponseModel response(Response response) {
    if (response instanceof Response.Film film) {
      return new ResponseModel.FilmDiffusion(film.timeConstant());
    }
    if (response instanceof Response.Membrane membrane) {
      return new ResponseModel.MembraneDiffusion(membrane.timeConstant());
    }
    if (response instanceof Response.Hyperbola hyperbola) {
      return new ResponseModel.Hyperbola(hyperbola.timeConstant());
    }
    Response.TwoExponentials two = (Response.TwoExponentials) response;
    return new ResponseModel.TwoExponentials(
        two.timeConstant(), two.slowTimeConstant(), two.slowPercent() / PERCENT);
  }

  private static ScheduledFault fault(SimulatedFault fault) {
    return new ScheduledFault(kind(fault.kind()), fault.at(), fault.span(), fault.every());
  }

  private static Fault kind(SimulatedFault.Kind kind) {
    if (kind instanceof SimulatedFault.Silent) {
      return new Fault.Silent();
    }
    if (kind instanceof SimulatedFault.Unplugged) {
      return new Fault.Unplugged();
    }
    if (kind instanceof SimulatedFault.Flood flood) {
      return new Fault.Flood(flood.times());
    }
    if (kind instanceof SimulatedFault.OpenCircuit open) {
      return new Fault.OpenCircuit(open.potentialMillivolts(), open.wanderMillivolts());
    }
    if (kind instanceof SimulatedFault.Spikes spikes) {
      return new Fault.Spikes(spikes.sizeMillivolts(), spikes.sharePercent() / PERCENT);
    }
    if (kind instanceof SimulatedFault.NoiseBurst burst) {
      return new Fault.NoiseBurst(burst.noiseMillivolts());
    }
    if (kind instanceof SimulatedFault.AirBubble bubble) {
      return new Fault.AirBubble(bubble.jumpMillivolts(), bubble.slower());
    }
    if (kind instanceof SimulatedFault.CoatedMembrane coat) {
      return new Fault.CoatedMembrane(coat.slower());
    }
    return new Fault.OffsetJump(((SimulatedFault.OffsetJump) kind).jumpMillivolts());
  }
}
