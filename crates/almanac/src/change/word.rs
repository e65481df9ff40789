//! The closed words of the change rules: what a cook may want to do, to what, and what exactly.

use crate::closed_list::closed_list;

closed_list!(
    /// What the cook wants to do.
    Change {
        /// Put in something new.
        Add = "add",
        /// Sweeten with something that is no sugar.
        AlternativeSweetener = "alternative-sweetener",
        /// Use another height.
        Altitude = "altitude",
        /// Make twice as much at once.
        BatchDouble = "batch-double",
        /// Make half.
        BatchHalf = "batch-half",
        /// Use another appliance.
        CannerOther = "canner-other",
        /// Use another pressure.
        CannerPressure = "canner-pressure",
        /// Use a steam canner.
        CannerSteam = "canner-steam",
        /// Cook it otherwise.
        Cook = "cook",
        /// Cut it otherwise.
        Cut = "cut",
        /// Freeze it.
        FreezeInstead = "freeze-instead",
        /// Use a larger jar.
        JarLarger = "jar-larger",
        /// Use a smaller jar.
        JarSmaller = "jar-smaller",
        /// Process below the boil.
        LowTempPasteurize = "low-temp-pasteurize",
        /// Use less.
        Lower = "lower",
        /// Mash or puree it.
        Mash = "mash",
        /// Work in another way.
        Method = "method",
        /// Mix in other shares.
        MixRatio = "mix-ratio",
        /// Leave out.
        Omit = "omit",
        /// Follow a formula of one's own.
        OwnFormula = "own-formula",
        /// Pack it otherwise.
        Pack = "pack",
        /// Leave the process out.
        ProcessSkip = "process-skip",
        /// Process for another time.
        ProcessTime = "process-time",
        /// Use more.
        Raise = "raise",
        /// Put something else in its place.
        Replace = "replace",
        /// Can again what did not seal.
        ReprocessUnsealed = "reprocess-unsealed",
        /// Can again what was processed wrongly.
        ReprocessWrongProcess = "reprocess-wrong-process",
        /// Keep it otherwise.
        Store = "store",
    }
);

closed_list!(
    /// What it is done to.
    IngredientClass {
        /// Acid of any kind.
        Acid = "acid",
        /// Garlic.
        Garlic = "garlic",
        /// Dried herbs.
        HerbDried = "herb-dried",
        /// Fresh herbs.
        HerbFresh = "herb-fresh",
        /// Hot peppers.
        HotPepper = "hot-pepper",
        /// Lemon juice.
        LemonJuice = "lemon-juice",
        /// Vegetables low in acid.
        LowAcidVegetable = "low-acid-vegetable",
        /// Oil and fat.
        Oil = "oil",
        /// Onions.
        Onion = "onion",
        /// Anything else.
        Other = "other",
        /// Pectin.
        Pectin = "pectin",
        /// The produce itself.
        Produce = "produce",
        /// Salt.
        Salt = "salt",
        /// Spice.
        Spice = "spice",
        /// Sugar.
        Sugar = "sugar",
        /// Sweet peppers.
        SweetPepper = "sweet-pepper",
        /// Thickeners.
        Thickener = "thickener",
        /// Kinds of tomato.
        TomatoKind = "tomato-kind",
        /// Vinegar.
        Vinegar = "vinegar",
        /// Water and other liquid.
        Water = "water",
    }
);

closed_list!(
    /// What exactly is put in, taken out or done.
    What {
        /// 15 lb above 1,000 ft.
        FifteenPoundsAboveThousandFeet = "15-lb-above-1000-ft",
        /// Above 95 F.
        Above95F = "above-95-F",
        /// Every case of the change.
        All = "all",
        /// All ripe fruit.
        AllRipeFruit = "all-ripe-fruit",
        /// Almond extract.
        AlmondExtract = "almond-extract",
        /// Alum.
        Alum = "alum",
        /// Strictly over the limit.
        AmountAbove = "amount-above",
        /// Strictly under the limit.
        AmountBelow = "amount-below",
        /// Between the limits, both included.
        AmountFromTo = "amount-from-to",
        /// From the first limit, included, to the second, not included.
        AmountFromUnder = "amount-from-under",
        /// At most the limit.
        AmountUpTo = "amount-up-to",
        /// Another berry.
        AnotherBerry = "another-berry",
        /// Another food.
        AnotherFood = "another-food",
        /// Another onion colour.
        AnotherOnionColour = "another-onion-colour",
        /// Another pepper kind.
        AnotherPepperKind = "another-pepper-kind",
        /// Apple.
        Apple = "apple",
        /// Apricots.
        Apricots = "apricots",
        /// Exactly the variation named in the limit.
        AsPrinted = "as-printed",
        /// Asian pear.
        AsianPear = "asian-pear",
        /// Aspirin.
        Aspirin = "aspirin",
        /// Banana.
        Banana = "banana",
        /// Barley.
        Barley = "barley",
        /// Beet cooking water.
        BeetCookingWater = "beet-cooking-water",
        /// Blossom end left.
        BlossomEndLeft = "blossom-end-left",
        /// Boiling water.
        BoilingWater = "boiling-water",
        /// Bottled lemon juice.
        BottledLemonJuice = "bottled-lemon-juice",
        /// Bottled lime juice.
        BottledLimeJuice = "bottled-lime-juice",
        /// Bought juice.
        BoughtJuice = "bought-juice",
        /// Brine top up.
        BrineTopUp = "brine-top-up",
        /// Broth.
        Broth = "broth",
        /// Brown sugar.
        BrownSugar = "brown-sugar",
        /// Butter.
        Butter = "butter",
        /// Canned for fresh.
        CannedForFresh = "canned-for-fresh",
        /// Canned or frozen.
        CannedOrFrozen = "canned-or-frozen",
        /// Canning powder.
        CanningPowder = "canning-powder",
        /// Chunks.
        Chunks = "chunks",
        /// Cider vinegar.
        CiderVinegar = "cider-vinegar",
        /// Cinnamon.
        Cinnamon = "cinnamon",
        /// Citric acid.
        CitricAcid = "citric-acid",
        /// Coconut.
        Coconut = "coconut",
        /// Cold jars.
        ColdJars = "cold-jars",
        /// Corn syrup.
        CornSyrup = "corn-syrup",
        /// Cornstarch.
        Cornstarch = "cornstarch",
        /// Cream.
        Cream = "cream",
        /// Cream corn.
        CreamCorn = "cream-corn",
        /// Dense food.
        DenseFood = "dense-food",
        /// Dishwasher process.
        DishwasherProcess = "dishwasher-process",
        /// Dishwasher wash.
        DishwasherWash = "dishwasher-wash",
        /// Drained tomatoes.
        DrainedTomatoes = "drained-tomatoes",
        /// Dried beans.
        DriedBeans = "dried-beans",
        /// Dumplings.
        Dumplings = "dumplings",
        /// Each with own direction.
        EachWithOwnDirection = "each-with-own-direction",
        /// Elderberries.
        Elderberries = "elderberries",
        /// Fig.
        Fig = "fig",
        /// Flake salt by volume.
        FlakeSaltByVolume = "flake-salt-by-volume",
        /// Flour.
        Flour = "flour",
        /// Food colour.
        FoodColour = "food-colour",
        /// Forced cooling.
        ForcedCooling = "forced-cooling",
        /// Fresh basil.
        FreshBasil = "fresh-basil",
        /// Fresh citrus juice.
        FreshCitrusJuice = "fresh-citrus-juice",
        /// Fresh garlic.
        FreshGarlic = "fresh-garlic",
        /// Fresh pepper.
        FreshPepper = "fresh-pepper",
        /// Frosted vines.
        FrostedVines = "frosted-vines",
        /// Frozen apples.
        FrozenApples = "frozen-apples",
        /// Frozen blueberries.
        FrozenBlueberries = "frozen-blueberries",
        /// Frozen cherries.
        FrozenCherries = "frozen-cherries",
        /// Frozen peaches.
        FrozenPeaches = "frozen-peaches",
        /// Garlic.
        Garlic = "garlic",
        /// Green tomatoes.
        GreenTomatoes = "green-tomatoes",
        /// Half gallon.
        HalfGallon = "half-gallon",
        /// Homemade vinegar.
        HomemadeVinegar = "homemade-vinegar",
        /// Honey.
        Honey = "honey",
        /// In oil at room temperature.
        InOilAtRoomTemperature = "in-oil-at-room-temperature",
        /// In pressure canner.
        InPressureCanner = "in-pressure-canner",
        /// Instant starch.
        InstantStarch = "instant-starch",
        /// Inverting.
        Inverting = "inverting",
        /// Jar sterilizing.
        JarSterilizing = "jar-sterilizing",
        /// Key lime juice.
        KeyLimeJuice = "key-lime-juice",
        /// Leafy greens.
        LeafyGreens = "leafy-greens",
        /// Lime rinse.
        LimeRinse = "lime-rinse",
        /// Lime soak.
        LimeSoak = "lime-soak",
        /// Liquid on raw pack.
        LiquidOnRawPack = "liquid-on-raw-pack",
        /// Malt vinegar.
        MaltVinegar = "malt-vinegar",
        /// Mango.
        Mango = "mango",
        /// Mason jar.
        MasonJar = "mason-jar",
        /// Mayonnaise jars.
        MayonnaiseJars = "mayonnaise-jars",
        /// Mayonnaise jars under pressure.
        MayonnaiseJarsUnderPressure = "mayonnaise-jars-under-pressure",
        /// Meat.
        Meat = "meat",
        /// Melon.
        Melon = "melon",
        /// Microwave.
        Microwave = "microwave",
        /// Milk.
        Milk = "milk",
        /// Modified pectin.
        ModifiedPectin = "modified-pectin",
        /// Multicooker.
        Multicooker = "multicooker",
        /// Mushrooms.
        Mushrooms = "mushrooms",
        /// Nectarines.
        Nectarines = "nectarines",
        /// Non food plastic.
        NonFoodPlastic = "non-food-plastic",
        /// Noodles.
        Noodles = "noodles",
        /// Oil.
        Oil = "oil",
        /// One factor down.
        OneFactorDown = "one-factor-down",
        /// Onion.
        Onion = "onion",
        /// Open kettle.
        OpenKettle = "open-kettle",
        /// Other pectin form.
        OtherPectinForm = "other-pectin-form",
        /// Oven.
        Oven = "oven",
        /// Overripe.
        Overripe = "overripe",
        /// Papaya.
        Papaya = "papaya",
        /// Pasta.
        Pasta = "pasta",
        /// Pear.
        Pear = "pear",
        /// Peppers.
        Peppers = "peppers",
        /// Pineapple.
        Pineapple = "pineapple",
        /// Pressure saucepan.
        PressureSaucepan = "pressure-saucepan",
        /// Process or freeze.
        ProcessOrFreeze = "process-or-freeze",
        /// Pumpkin.
        Pumpkin = "pumpkin",
        /// Quart.
        Quart = "quart",
        /// Raw ground meat.
        RawGroundMeat = "raw-ground-meat",
        /// Raw only.
        RawOnly = "raw-only",
        /// Reduced sodium salt.
        ReducedSodiumSalt = "reduced-sodium-salt",
        /// Rehydrated beans.
        RehydratedBeans = "rehydrated-beans",
        /// Remake soft jelly.
        RemakeSoftJelly = "remake-soft-jelly",
        /// Reopening.
        Reopening = "reopening",
        /// Retightening.
        Retightening = "retightening",
        /// Rice.
        Rice = "rice",
        /// Rice vinegar.
        RiceVinegar = "rice-vinegar",
        /// Sea level time.
        SeaLevelTime = "sea-level-time",
        /// Seafood.
        Seafood = "seafood",
        /// Shelf.
        Shelf = "shelf",
        /// Skins left on.
        SkinsLeftOn = "skins-left-on",
        /// Slicing tomatoes.
        SlicingTomatoes = "slicing-tomatoes",
        /// Squash.
        Squash = "squash",
        /// Steam.
        Steam = "steam",
        /// Sucralose.
        Sucralose = "sucralose",
        /// Summer squash.
        SummerSquash = "summer-squash",
        /// Sun.
        Sun = "sun",
        /// Swap by count.
        SwapByCount = "swap-by-count",
        /// Sweet potato.
        SweetPotato = "sweet-potato",
        /// Syrup.
        Syrup = "syrup",
        /// Table salt.
        TableSalt = "table-salt",
        /// Tapioca.
        Tapioca = "tapioca",
        /// Tomatillos.
        Tomatillos = "tomatillos",
        /// Tomato.
        Tomato = "tomato",
        /// Tomato juice.
        TomatoJuice = "tomato-juice",
        /// Tomato paste.
        TomatoPaste = "tomato-paste",
        /// Tomatoes.
        Tomatoes = "tomatoes",
        /// Underripe peaches.
        UnderripePeaches = "underripe-peaches",
        /// Unsoaked beans.
        UnsoakedBeans = "unsoaked-beans",
        /// Unsterilized jars.
        UnsterilizedJars = "unsterilized-jars",
        /// Unsweetened juice.
        UnsweetenedJuice = "unsweetened-juice",
        /// Used lids.
        UsedLids = "used-lids",
        /// Vegetables.
        Vegetables = "vegetables",
        /// Venting.
        Venting = "venting",
        /// Vinegar.
        Vinegar = "vinegar",
        /// Vinegar under 5 percent.
        VinegarUnder5Percent = "vinegar-under-5-percent",
        /// Waiting jars.
        WaitingJars = "waiting-jars",
        /// Water.
        Water = "water",
        /// Wax seal.
        WaxSeal = "wax-seal",
        /// White nectarines.
        WhiteNectarines = "white-nectarines",
        /// White peaches.
        WhitePeaches = "white-peaches",
        /// White vinegar.
        WhiteVinegar = "white-vinegar",
        /// Wild mushrooms.
        WildMushrooms = "wild-mushrooms",
        /// Wine vinegar.
        WineVinegar = "wine-vinegar",
        /// Wire bail jars.
        WireBailJars = "wire-bail-jars",
        /// With bones.
        WithBones = "with-bones",
        /// Zinc caps.
        ZincCaps = "zinc-caps",
    }
);
