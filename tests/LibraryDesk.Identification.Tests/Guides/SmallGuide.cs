using System.Text;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>A hand-made guide of invented plants, small enough to reckon by hand.</summary>
internal static class SmallGuide
{
    public const string Json = """
        {
          "format": 1,
          "id": "small", "version": "1", "crop": "Small plants", "genus": "Parva",
          "sources": [
            {"id":"book","citation":"an invented book","licence":"none"},
            {"id":"memory","citation":"from memory"}
          ],
          "stages": [ {"id":"leafy","name":"Leafy"}, {"id":"flowering","name":"Flowering"} ],
          "parts": [ {"id":"leaves","name":"Leaves","stage":"leafy"}, {"id":"flowers","name":"Flowers","stage":"flowering"} ],
          "traits": [
            {"id":"spots","name":"Spots","question":"Are there spots?","part":"flowers","effort":"look","minutes":1,"kind":"unordered","states":[
              {"id":"absent","name":"None"},
              {"id":"present","name":"Some"}]},
            {"id":"hairs","name":"Hairs","question":"How hairy is it?","part":"leaves","effort":"touch","minutes":1,"kind":"ordered","variesWithinPlant":true,"states":[
              {"id":"none","name":"None"},
              {"id":"few","name":"Few"},
              {"id":"many","name":"Many"}]},
            {"id":"leaf_mm","name":"Leaf length","question":"How long is a leaf?","part":"leaves","effort":"look","minutes":2,"kind":"measured","unit":"mm"},
            {"id":"scent","name":"Scent","question":"","part":"flowers","effort":"touch","kind":"unordered","asked":false,"states":[
              {"id":"sweet","name":"Sweet"},
              {"id":"plain","name":"Plain"}]}
          ],
          "cautions": [ {"id":"beware","title":"Beware","text":"Do not eat it.","sources":["book"]} ],
          "candidates": [
            {"id":"parva-alba","name":"Parva alba","kind":"species","domesticated":true,"prior":0.5,"forms":[
              {"id":"tall","name":"tall","weight":0.75},
              {"id":"dwarf","name":"dwarf","weight":0.25}]},
            {"id":"parva-nigra","name":"Parva nigra","kind":"species","prior":0.3},
            {"id":"falsa-parva","name":"Falsa parva","kind":"look-alike","prior":0.1,"cautions":["beware"]},
            {"id":"something-else","name":"something else","kind":"something-else","prior":0.1}
          ],
          "cells": [
            {"of":"parva-alba","trait":"spots","state":"absent","word":"usually","source":"book"},
            {"of":"parva-alba/dwarf","trait":"spots","state":"present","p":0.9,"n":10,"source":"book"},
            {"of":"parva-alba/dwarf","trait":"spots","state":"absent","p":0.1,"n":10,"source":"book"},
            {"of":"parva-nigra","trait":"spots","state":"present","word":"always","source":"book"},
            {"of":"parva-alba","trait":"hairs","state":"none","word":"usually","source":"book"},
            {"of":"parva-alba","trait":"hairs","state":"few","word":"sometimes","source":"book"},
            {"of":"parva-nigra","trait":"hairs","state":"many","word":"always","source":"book"},
            {"of":"falsa-parva","trait":"hairs","state":"few","word":"always","source":"memory"},
            {"of":"parva-alba","trait":"leaf_mm","low":20,"high":40,"word":"usually","source":"book"},
            {"of":"parva-alba/dwarf","trait":"leaf_mm","low":5,"high":12,"word":"usually","source":"book"},
            {"of":"parva-nigra","trait":"leaf_mm","low":30,"high":60,"word":"always","source":"book"},
            {"of":"parva-alba","trait":"scent","state":"sweet","word":"usually","source":"book"},
            {"of":"parva-nigra","trait":"scent","state":"plain","word":"usually","source":"book"}
          ]
        }
        """;

    private static readonly Lazy<CompiledGuide> Lazily = new(() => CompiledGuide.Compile(Read(Json)));

    public static CompiledGuide Compiled => Lazily.Value;

    public static CropGuide Read(string json)
    {
        var reading = GuideFile.Read(Encoding.UTF8.GetBytes(json));
        Assert.Empty(reading.Faults);
        return reading.Guide!;
    }

    public static IReadOnlyList<GuideFault> Faults(string json) => GuideFile.Read(Encoding.UTF8.GetBytes(json)).Faults;
}
